#include "words/evidence_words.h"

#include "words/caution_words.h"
#include "words/fact_words.h"

#include <array>

// What is usual of base plus fog, of 135 film and of film on clear base, is common practice (no
// source).

namespace fogline {

namespace {

using enum Evidence;

constexpr std::array<FactWords<Evidence>, 40> words{{
    {shadow,
     "Shadows: {density:2} above clear film in {frames:median}; usual is {usual_from:2} to "
     "{usual_to:2}."},
    {shadow_at_least,
     "Shadows: at least {density:2} above clear film in {frames:median}; usual is {usual_from:2} "
     "to {usual_to:2}."},
    {highlight,
     "Highlights: {density:2} above clear film in {frames:median}; usual is {usual_from:2} to "
     "{usual_to:2}."},
    {highlight_at_least,
     "Highlights: at least {density:2} above clear film in {frames:median}; usual is "
     "{usual_from:2} to {usual_to:2}."},
    {edge_print,
     "Edge print: {density:2} above clear film; how dense this film's should be is known to "
     "{usual_sd_share:percent} only, so it weighs accordingly."},
    {edge_print_at_least,
     "Edge print: at least {density:2} above clear film; how dense this film's should be is known "
     "to {usual_sd_share:percent} only, so it weighs accordingly."},
    {edge_print_blunt,
     "Edge print: {density:2} above clear film; so dense that it tells nothing more of "
     "development."},
    {edge_print_blunt_at_least,
     "Edge print: at least {density:2} above clear film; so dense that it tells nothing more of "
     "development."},
    {leader_black, "Leader: {density:2} above clear film, black as it should be."},
    {leader_black_at_least,
     "Leader: at least {density:2} above clear film, black as it should be."},
    {leader_grey,
     "Leader: {density:2} above clear film, grey; {usual_density:2} or more is usual."},
    {base_fog_135,
     "Base plus fog: {density:2}; usual is 0.20 to 0.35, very fast film to 0.45, clear base less."},
    {base_fog_clear, "Base plus fog: {density:2}; usual is 0.05 to 0.20."},
    {known_exposures,
     "Characteristic curve through {exposures:0} known exposures: contrast index "
     "{contrast_index:3} ± {contrast_index_u95:3}."},
    {speed_point,
     "The film reaches its speed point (0.10 above base plus fog) {stops_under_metered:1} stops "
     "under the metered exposure; {usual_stops:1} is usual."},
    {leader_starved, "Leader: {density:2} above clear film; {usual_density:2} or more is usual."},
    {base_fog_excess, "Base plus fog: {density:2}; usual is about {usual_density:2}."},
    {grey_scan_of_mask,
     "The scan is grey, so colour film with its orange mask would read the same: a scan in colour "
     "tells, and so does film_type on the roll card."},
    {no_picture, "No picture shows on {film_mm:0} mm of film."},
    {edge_print_there, "Edge print shows, {density:2} above clear film: developer was at work."},
    {no_edge_print, "No edge print was found."},
    {edge_print_unread, "Edge print is only read on 135 film, so the two can't be told apart."},
    {leader_there, "The leader stands at {density:2} above clear film: developer was at work."},
    {coloured_veil, "Coloured veil of the clear film: {density:3} ± {density_u95:3}."},
    {milky_veil, "Milky veil of the clear film: {density:3} ± {density_u95:3}."},
    {yellow_veil, "Yellow veil of the clear film: {density:3} ± {density_u95:3}."},
    {stain_with_silver,
     "Blue density gained at a silver density of 1: {density:3} ± {density_u95:3}."},
    {drying_marks, "Seen: drying marks, {count:0}."},
    {drying_marks_strongest,
     "Seen: drying marks, {count:0}; the strongest {contrast_density:2} off its surround."},
    {air_bells, "Seen: air bells, {count:0}."},
    {air_bells_strongest,
     "Seen: air bells, {count:0}; the strongest {contrast_density:2} off its surround."},
    {dirt, "Seen: pieces of dirt, {count:0}."},
    {dirt_strongest,
     "Seen: pieces of dirt, {count:0}; the strongest {contrast_density:2} off its surround."},
    {scratches, "Seen: scratches, {count:0}."},
    {scratches_strongest,
     "Seen: scratches, {count:0}; the strongest {contrast_density:2} off its surround."},
    {light_struck, "Seen: places struck by light, {count:0}."},
    {light_struck_strongest,
     "Seen: places struck by light, {count:0}; the strongest {contrast_density:2} off its "
     "surround."},
    {uneven_development, "Seen: streaks or bands of development, {count:0}."},
    {uneven_development_strongest,
     "Seen: streaks or bands of development, {count:0}; the strongest {contrast_density:2} off its "
     "surround."},
    {told, "It was told by another report."},
}};
static_assert(rows_in_order(words));

constexpr std::array<FactWords<FurtherMeasurement>, 5> measurements{{
    {FurtherMeasurement::compare_frame_numbers,
     "Compare the frame numbers with those of another roll of this film whose development was "
     "right: equally dense numbers mean equal development."},
    {FurtherMeasurement::scan_leader,
     "Scan the fogged leader too: a grey leader means little development."},
    {FurtherMeasurement::scan_more_strips,
     "Scan the other strips of this roll: more frames even out the subjects."},
    {FurtherMeasurement::calibrate_scanner,
     "Calibrate the scanner with a silver step wedge: it is not known how dense this scanner reads "
     "silver."},
    {FurtherMeasurement::meter_walls,
     "On the next roll, take two metered pictures of an evenly lit wall five stops apart: they "
     "part light from time better than anything this roll can tell."},
}};
static_assert(rows_in_order(measurements));

std::string unfit_sentence(const UnfitScan& scan) {
  return scan.file + ": " +
         (scan.caution ? caution_sentence(*scan.caution) : "no density could be read");
}

}  // namespace

std::string evidence_sentence(const Fact<Evidence>& seen) {
  return sentence_of<Evidence>(seen, words);
}

std::vector<std::string> evidence_sentences(const std::vector<Fact<Evidence>>& seen) {
  std::vector<std::string> sentences;
  sentences.reserve(seen.size());
  for (const Fact<Evidence>& one : seen) {
    sentences.push_back(evidence_sentence(one));
  }
  return sentences;
}

std::vector<std::string> evidence_sentences(const Finding& finding) {
  std::vector<std::string> sentences = evidence_sentences(finding.evidence);
  for (const UnfitScan& scan : finding.unfit_scans) {
    sentences.push_back(unfit_sentence(scan));
  }
  if (finding.would_tell_most) {
    sentences.emplace_back(measurement_sentence(*finding.would_tell_most));
  }
  return sentences;
}

std::string_view measurement_sentence(FurtherMeasurement measurement) {
  return measurements[static_cast<std::size_t>(measurement)].text;
}

}  // namespace fogline
