#pragma once

#include <fogline/base/refusal.h>
#include <fogline/density/scanner_calibration.h>

#include <optional>
#include <vector>

namespace fogline {

/// A step as found: its place in the row (whole pitches from the lightest found) and its density
/// above the bare light as read before calibration, or above the lightest step where the bare light
/// isn't known.
struct SeenStep {
  int slot = 0;
  double density = 0.0;
  /// At the top code: its density is only an upper bound.
  bool clipped = false;
};

/// Which reference step each seen one is, or why that can't be told.
struct StepAssignment {
  /// Index into the reference's steps for each seen step.
  std::vector<int> reference_index;
  /// Absent where it could be told.
  std::optional<Fact<Refusal>> failure;
  /// Nothing but the number of dark steps up to the film's end told which steps are missing.
  bool counted_from_dark_end = false;
  /// The lightest seen was taken for the first, since it lies unclipped beside the bare light.
  bool counted_from_light_end = false;
};

/// What is seen at a wedge's ends.
struct WedgeEnds {
  /// Steps' densities count from the bare light; else from the lightest step.
  bool above_bare_light = false;
  /// Something lighter than the steps lies beyond the lightest: bare light, clipped or not.
  bool light_end_in_sight = false;
  /// Steps too dark to be told apart up to the film's end.
  std::optional<int> unseen_dark_steps = std::nullopt;
};

/// Lays seen steps (lightest first) on a reference. Direction needs no telling: light falls as
/// density rises. Where fewer steps are seen than the reference has, the bare light decides which
/// are missing: the density of the lightest step is told from it by the slope of the steps next to
/// it, and must single out one place in the reference. Where it can't (the first steps and the bare
/// light are clipped), the number of steps hidden at the dark end does, up to three missing ones at
/// the light end; else, where the lightest step lies unclipped beside something lighter and the
/// bare light doesn't speak against it, it is the first, and the dark ones drown. What somebody
/// told goes before all of it. A reference that goes on beyond the film's end is refused.
StepAssignment assign_steps(const std::vector<SeenStep>& seen, const WedgeReference& reference,
                            const WedgeEnds& ends);

}  // namespace fogline
