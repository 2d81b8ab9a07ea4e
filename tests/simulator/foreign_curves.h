// Families of characteristic curves that nothing which is fitted to scans has. Each as a function
// of z, an exposure in units of density: from 0 to the maximum density, steepest slope about 1.
#pragma once

namespace filmsim {

/// A fast and a slow emulsion coated over each other: two steps with a flatter part between.
double two_layers(double z, double maximum_density);

/// A toe that is a power of exposure and sweeps up without a straight line.
double swept_toe(double z, double maximum_density);

/// Short toe and long shoulder (Gompertz 1825).
double short_toe(double z, double maximum_density);

/// A straight line that isn't: its slope goes up and down along it.
double wavy_line(double z, double maximum_density);

}  // namespace filmsim
