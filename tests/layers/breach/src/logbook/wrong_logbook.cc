#include <SQLiteCpp/SQLiteCpp.h>
#include <fogline/record/record_json.h>
#include <fogline/app/command.h>  // breach
#include <fogline/pixels/open_scan.h>  // breach
