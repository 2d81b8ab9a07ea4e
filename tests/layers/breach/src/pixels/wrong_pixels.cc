#include "files/input_file.h"
#include "tables/small_text_file.h"  // breach

#include <fogline/record/record_json.h>  // breach

#include <fstream>

#include <boost/program_options.hpp>  // breach
#include <jpeglib.h>
#include <lcms2.h>
#include <png.h>
#include <tiffio.h>
#include <toml++/toml.h>  // breach
