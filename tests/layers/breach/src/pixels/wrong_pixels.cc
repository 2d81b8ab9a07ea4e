#include <fstream>
#include <jpeglib.h>
#include <lcms2.h>
#include <png.h>
#include <tiffio.h>
#include "files/input_file.h"
#include <fogline/record/record_json.h>  // breach
#include "tables/small_text_file.h"  // breach
#include <toml++/toml.h>  // breach
#include <boost/program_options.hpp>  // breach
