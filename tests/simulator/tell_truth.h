// Works out the truth of a scan from the film before the scanner touched it.
#pragma once

#include "simulator/render.h"

namespace filmsim {

/// Fills `simulated.truth` (marks are there already). `bare_px` are pixels of bare light.
void tell_truth(Simulated& simulated, const FilmPlanes& planes, const CameraGeometry& camera,
                const std::vector<StripGeometry>& geometries,
                const std::vector<std::size_t>& bare_px);

StripTruth strip_truth(const Scenario& scenario, std::size_t strip, const FilmPlanes& planes,
                       const CameraGeometry& camera, const StripGeometry& geometry);

FrameTruth frame_truth(const Scenario& scenario, std::size_t strip, std::size_t frame,
                       const FilmPlanes& planes, const CameraGeometry& camera,
                       const StripGeometry& geometry);

/// Rank by linear interpolation between the sorted values, 0 to 1. Sorts.
double percentile(std::vector<float>& values, double share);

/// Transmittance by visual weights of the diffuse densities of one film pixel, marks left out.
double visual_transmittance(const FilmPlanes& planes, const FilmStock& stock, std::size_t pixel);

}  // namespace filmsim
