#include "words/caution_words.h"

#include "words/phrases.h"
#include "words/unknown_words.h"

#include <array>
#include <cmath>
#include <string_view>
#include <vector>

namespace fogline {

namespace {

constexpr auto words = std::to_array<FactWords<CautionKind>>({
    {CautionKind::resolution_tag_odd,
     "The file states a resolution that can't be right, so it is not used; perforations or the "
     "frame size must give the scale."},
    {CautionKind::transfer_assumed,
     "The file doesn't tell how its codes stand for light; the usual sRGB curve is assumed. "
     "Densities are indicative: save the scan with a profile, or better with 16 bits and linear."},
    {CautionKind::profile_unfit,
     "The file's colour profile can't be used: {why}. The scan is read as if it had none."},
    {CautionKind::profile_table,
     "The file's colour profile has a table instead of tone curves; the curve was read along its "
     "grey axis, so densities of tinted film are less sure."},
    {CautionKind::several_pages,
     "The file holds {pages:0} full pages; the largest is read, the others are not looked at."},
    {CautionKind::transparency_unused, "The file holds a transparency channel; it is not used."},
    {CautionKind::channels_unused,
     "The file holds more channels than colours (transparency or infrared); they are not used."},
    {CautionKind::transfer_tag_odd,
     "The file's tone table doesn't rise from dark to light, so it is not used."},
    {CautionKind::grey_response_curve,
     "The file states the density of each grey level in an outdated way, which is believed; "
     "compare a known density before you rely on it."},

    {CautionKind::inverted,
     "The perforations are dark and the film's clear base is darker than its picture: the scan was "
     "turned into a positive, with a curve of its own. Scan it again as a transparent positive, "
     "with every automatic improvement off."},
    {CautionKind::base_clipped,
     "The film's clear base stands at the top code: levels were stretched until the thinnest film "
     "became white, and its density is lost. Scan again with automatic levels off and less "
     "exposure, so that the bare window reads 80 to 95 % of full scale."},
    {CautionKind::no_film,
     "No film was found: neither perforations nor a strip of a known width nor frames between "
     "clear borders. Scan the negative as a transparency, with some millimetres of bare light or "
     "rebate around the frames."},
    {CautionKind::no_frames,
     "Something lies there that may be film, but neither perforations nor frames between clear "
     "borders show it, so nothing can be said of base, light or development. If this is a strip of "
     "negatives, scan it with its rebate and some bare light in sight."},
    {CautionKind::no_clear_film,
     "No unexposed film is in sight, neither rebate nor a gap between frames, so there is nothing "
     "to measure densities from. Scan again with the frame's borders in sight."},
    {CautionKind::below_light_path,
     "What was taken for clear film reads clearer than the bare light beside it, which no film is: "
     "one of the two was mistaken, or the light changes across the picture. Scan again with even "
     "light, the holes and some bare light in sight."},
    {CautionKind::below_clear_film,
     "The pictures read thinner than clear film, which no picture is: clear film was mistaken, or "
     "the light falls off towards it. Scan again with even light and the whole rebate in sight, or "
     "give a picture of the bare light with --blank."},
    {CautionKind::wedge_alone,
     "A step wedge lies in this scan and no other film. It calibrates the scanner: fogline "
     "calibrate. If it was printed on the roll, say so on the roll card."},
    {CautionKind::transfer_unknown,
     "The file doesn't say whether its codes are linear light or a display curve of it, and the "
     "picture fits both, so no density can be told. Say which with --transfer (linear or srgb), or "
     "save the scan with its colour profile."},
    {CautionKind::bare_light_clipped,
     "The bare light stands at the top code, so its true level is lost: densities are given above "
     "the film's own base. Scan again with less exposure, so that the bare light reads 80 to 95 % "
     "of full scale."},
    {CautionKind::bare_light_hidden,
     "No bare light path is in sight, so densities are given above the film's own base, and base "
     "plus fog can't be told. Leave the perforations or some millimetres of empty window in "
     "sight."},
    {CautionKind::bare_light_partly_clipped,
     "Part of the bare light stands at the top code; the zero of density is doubtful. Scan again "
     "with a little less exposure."},
    {CautionKind::channel_clipped,
     "One colour of the light stands at the top code and is lost; densities were read from the "
     "others, and no tint can be told. Scan again with less exposure, or with whiter light."},
    {CautionKind::eight_bit,
     "Eight bits a channel are coarse in dense film: trust densities to about 1.5. Save 16 bits."},
    {CautionKind::camera_display_curve,
     "A camera's finished picture bends its tone curve, most of all near white, and nobody says "
     "how: small densities may read up to three times too low. Save the raw picture, or a linear "
     "one."},
    {CautionKind::grey_scan,
     "The scan is grey: the colour of the clear film can't be judged. Scan in colour, even "
     "black-and-white film."},
    {CautionKind::resolution_tag_wrong,
     "The file's resolution doesn't fit the film's perforations; the perforations were believed."},
    {CautionKind::uneven_light,
     "The light is uneven over the film. Its course along the perforations was taken out; what it "
     "does between them isn't seen."},
    {CautionKind::glare_strong,
     "Much stray light reaches the sensor. It was taken away as far as the scan shows it; dense "
     "film is read less surely. Mask the light around the film."},
    {CautionKind::glare_of_calibration,
     "Nothing opaque is in sight, so the calibration's share of stray light was taken away. A bit "
     "of opaque tape beside the film would tell this scan's own."},
    {CautionKind::glare_unknown,
     "Nothing opaque is in sight, so stray light could not be measured; a usual amount was taken "
     "away, and dense film is less sure. A bit of opaque tape beside the film would tell."},

    {CautionKind::zero_remembered,
     "No bare light is in sight, so density zero is that of the calibration's scan: true only if "
     "exposure and levels were the same to the last setting."},
    {CautionKind::scanner_shape_only,
     "The scanner's calibration knows only the shape of its response: densities are in its own "
     "unit."},
    {CautionKind::scanner_bits,
     "The scan has {scan_bits:0} bits a channel, the calibration {calibration_bits:0}: use one "
     "setting for both."},
    {CautionKind::scanner_kind, "The scan comes from another kind of device than the calibration."},
    {CautionKind::scanner_balance,
     "The channels' bare light stands {off_density:2} in density off the balance of the "
     "calibration: colour correction was at work, or the lamp is another; switch all correction "
     "off."},
    {CautionKind::scanner_zero,
     "The bare light reads {off_density:2} in density off that of the calibration: another "
     "exposure or other levels; scan wedge and film with the very same settings."},

    {CautionKind::bracket_ambiguous,
     "{Why}: tell first_frame on the card, or scan the strip with its frame numbers upright."},
    {CautionKind::metered_frame_missing,
     "Frame {frame:0}, whose metered tone is on the card, can't be read."},
    {CautionKind::wedge_place_doubtful,
     "Which step of the printed wedge is which can't be told for sure: nothing shows its lightest "
     "end. Contrast stands; the speed point isn't told. Leave a dark border around the wedge."},
    {CautionKind::target_unread, "No characteristic curve: {why}."},

    {CautionKind::steps_counted_from_dark_end,
     "The lightest steps can't be told from the bare light, so the steps were counted from the "
     "film's dark end: if that end isn't the last step's, every density is a step off. Scan with "
     "less exposure to be sure."},
    {CautionKind::steps_counted_from_light_end,
     "Its lightest step was taken for the first of the reference, since it lies unclipped beside "
     "the "
     "bare light; the {drowned:0} darkest of the reference drown in this scan. If the lightest in "
     "sight is another, say so with --first."},
    {CautionKind::steps_left_out,
     "Left out as not fitting the others: step {steps}. Look for dirt or scratches there, or a "
     "slip in the reference."},
    {CautionKind::steps_clipped,
     "At the top code, so not used: step {steps}. Scan again with less exposure to use them."},
    {CautionKind::reference_doubtful,
     "By the file's own tone curve the steps read {read_over_reference:1} times as dense as the "
     "reference says: either that curve is far off, or the reference is another wedge's. Check "
     "that it is this one's."},
    {CautionKind::bare_light_unknown,
     "No bare light below the top code lies beside the wedge, so the response above the lightest "
     "step is a guess; scan again with some in sight."},
    {CautionKind::stray_light_untold,
     "Nothing opaque is in sight, so stray light is told by the dense steps alone; a strip of "
     "black card beside the wedge would tell it better."},
    {CautionKind::nominal_wedge,
     "The wedge's densities are as designed, nobody measured them: every density carries 3 % for "
     "that (standard uncertainty)."},
    {CautionKind::device_untold,
     "Flatbeds, film scanners and cameras read silver differently dense; fogline calibrate "
     "--device says which this is, and densities are surer then."},
    {CautionKind::shape_only,
     "The density of one layer isn't known, so only the response's shape is: any power of light "
     "would fit as well. Ranges compare, densities don't."},
    {CautionKind::limit_low,
     "Densities above the limit can't be told within 0.1. More exposure, 16 bits, or a mask round "
     "the film against stray light would raise it."},
    {CautionKind::eight_bits,
     "Eight bits a channel: dense film falls between two codes. Scan wedge and film with 16 bits."},
    {CautionKind::told, "Another program's caution, whose sentence is lost."},
});
static_assert(rows_in_order(words));

std::string list_of(const std::vector<double>& numbers) {
  std::string text;
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    text += i == 0 ? "" : i + 1 == numbers.size() ? " and " : ", ";
    text += std::to_string(std::lround(numbers[i]));
  }
  return text;
}

}  // namespace

std::span<const FactWords<CautionKind>> caution_words() {
  return words;
}

std::string caution_sentence(const Caution& caution) {
  const Fact<CautionKind>& fact = caution.fact;
  if (!fact.told.empty()) {
    return fact.told;
  }
  constexpr std::array<std::string_view, 3> parts{"why", "Why", "steps"};
  const std::string why = caution.why ? unknown_sentence(*caution.why) : std::string();
  const bool of_steps =
      fact.kind == CautionKind::steps_left_out || fact.kind == CautionKind::steps_clipped;
  const std::array<std::string_view, 6> numbers =
      of_steps ? std::array<std::string_view, 6>{} : fact_row(fact.kind).numbers;
  return filled(words[static_cast<std::size_t>(fact.kind)].text, numbers, fact.numbers, parts,
                {why, capitalised(why), list_of(fact.numbers)});
}

}  // namespace fogline
