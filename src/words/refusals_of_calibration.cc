#include "words/refusal_tables.h"

#include <array>

namespace fogline {

namespace {

using enum Refusal;

constexpr std::array<FactWords<Refusal>, 15> words{{
    {no_wedge,
     "{file}: no step wedge is in sight: no row of five or more even areas of one size that darken "
     "from one to the next; scan the whole wedge, flat and in focus, along an edge of the glass."},
    {more_steps_than_reference,
     "{file} shows {seen:0} steps where the reference has {known:0}: it is another wedge's, or "
     "steps are missing in it."},
    {steps_untold_by_bare_light,
     "{file} shows {seen:0} steps where the reference has {known:0}, and which are missing can't "
     "be told from the bare light; scan the whole wedge, or say which step of the reference is the "
     "lightest in sight (--first)."},
    {steps_without_bare_light,
     "{file} shows {seen:0} steps where the reference has {known:0}, and no unclipped bare light "
     "beside the wedge tells which are missing; scan the whole wedge with some bare light below "
     "the top code, or say which step of the reference is the lightest in sight (--first)."},
    {wedge_ends_early,
     "{file} shows {seen:0} steps where the reference has {known:0}, yet its film ends after "
     "{after:0}: the reference is another wedge's, or the wedge was cut."},
    {too_few_lights,
     "{file} shows fewer than four lights that can be used (the others are clipped or without "
     "light)."},
    {codes_not_falling,
     "{file} has codes that don't fall steadily while the reference's density rises: the reference "
     "is another wedge's, or the scan isn't a plain picture of the light."},
    {codes_not_of_light, "{file} has codes that don't follow the light."},
    {shots_differ,
     "{file} has other bits or channels than {first}: take all pictures with one setting."},
    {areas_not_as_named,
     "{file} shows {seen:0} even areas where {named:0} were named: name one for each, lightest "
     "first."},
    {blank_of_other_scan,
     "{file} can't be the blank of {scan}: it has another size or another number of channels; scan "
     "the bare light with the very settings of the film."},
    {blank_clipped,
     "{file} stands at the top code, so the bare light isn't measured in it; scan it and the film "
     "again with less exposure."},
    {grey_scan_colour_scanner,
     "{file} is grey, but its scanner was calibrated in colour: scan both with the same number of "
     "channels."},
    {colour_scan_grey_scanner,
     "{file} is in colour, but its scanner was calibrated in grey: scan both with the same number "
     "of channels."},
    {area_off_film,
     "{file}: the area marked for {stops:signed} stops doesn't lie on film whose densities can be "
     "read; mark it in pixels of the file, x and y of its upper left corner."},
}};

}  // namespace

std::span<const FactWords<Refusal>> refusals_of_calibration() {
  return words;
}

}  // namespace fogline
