#pragma once

#include <fogline/density/wedge_reference.h>

#include <string>

namespace fogline {

/// Reads a wedge's densities: CSV `step,density` with an optional third column u95 (comma,
/// semicolon or tab between; a heading line and lines that begin with # are skipped), or ISO 28178
/// (CGATS.17) text, its first table that has SAMPLE_ID and D_VIS. Steps may be listed rising or
/// falling. Throws FileError, with the line where a line isn't understood, where densities neither
/// rise nor fall all the way, there are fewer than 5 or more than 41, a step is named twice, or a
/// table isn't as long as it says.
WedgeReference read_wedge_reference(const std::string& file);

}  // namespace fogline
