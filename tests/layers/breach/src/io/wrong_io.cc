#include <fstream>
#include <jpeglib.h>
#include <lcms2.h>
#include <png.h>
#include <tiffio.h>
#include <fogline/record/roll_record.h>
#include <fogline/report/text.h>  // breach
#include <boost/program_options.hpp>  // breach
