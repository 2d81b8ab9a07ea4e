#include "app/manual/help_card.h"

namespace fogline {
namespace {

constexpr const char* card_text = R"(The roll card: what you noted of a roll, a TOML file

  fogline measure strip.tif --card roll-12.toml

Every key but name may be missing; an unknown key is named and refused. The more
is there, the more the report can say: with time and temperature it gives the
next time on the clock instead of a change in percent, with the film's type and
its clearing time the baths. Times are "minutes:seconds", dates
"year-month-day", temperatures degrees Celsius.

An invented example with all keys that most rolls have:

  name = "Roll 12"
  film = "grey box, iso 400"    # a label: rolls with one label share one model
  film_type = "cubic"           # or "tabular", "chromogenic"
  exposure_index = 320          # as set on the meter
  aim_contrast_index = 0.58     # the contrast you develop for
  print_with = "diffusion"      # or "condenser", "scan"
  batch = "B7"                  # as printed on the box
  expiry = "2027-03-01"
  exposed = "2025-10-04"
  developed = "2025-10-09"
  camera = "the old one"
  tank = "2025-10-09 a"         # rolls developed together name the same tank
  device = "flatbed"            # what scans it; or "film-scanner", "camera"
  base_tint = [0.28, 0.28, 0.29]  # red, green, blue density of its clean base

  [development]
  developer = "liquid developer"
  dilution = "1+14"
  volume_ml = 300
  time = "9:30"
  temperature_c = 20.0          # at the start
  end_temperature_c = 19.5
  agitation = "30 s, then 5 s each minute"
  presoak = "none"
  opened = "2025-08-20"         # when the concentrate was opened

  [stop]
  kind = "acid"                 # or "water"
  time = "0:30"

  [fix]
  kind = "rapid"                # or "plain", "hardening"
  dilution = "1+4"
  time = "5:00"
  rolls_before = 4              # through this same bath
  clearing_time = "0:50"        # a piece of this film in this bath
  fresh_clearing_time = "0:40"  # the same in the fresh bath

  [wash]
  method = "fills"
  fills = [5, 10, 20]           # inversions of each fill
  time = "10:00"                # for running water, or in all

Keys for few rolls:

  aim_like = "Roll 7"           # instead of aim_contrast_index: a roll that
                                # printed well

  [target]                      # known exposures on the roll itself
  kind = "bracket"              # evenly lit frames, in the order they were made
  stops = [-5, -3, -1, 1, 3]    # from the metered exposure
  by = "shutter"                # or "aperture", "filter"
  doubt_stops = 0.2             # how far each errs, typically (0.1 to 0.5)
  first_frame = 3               # where pictures come before it

  times = ["1/500", "1/60", "2"]  # instead of stops: as marked on the shutter
  metered_time = "1/60"         # the one that the meter gave

  [target]                      # or a wedge, printed on the film in contact
  kind = "exposed-wedge"
  reference = "wedge.csv"       # beside the card
  h_at_zero_lux_s = 0.8         # only where the exposure is known absolutely

  [[metered]]                   # a tone of a picture that was metered; as many
  frame = 4                     # as you like
  tone = "shadow"               # or "middle", "highlight"
  zone = 3
  doubt_stops = 0.5

With any bath: gloves, eyes guarded, fresh air; no vessel goes back to food;
used fixer carries silver and goes to a licensed collection, not down the drain;
the maker's safety sheet and local rules come first.
)";

}  // namespace

std::string card_help() {
  return card_text;
}

}  // namespace fogline
