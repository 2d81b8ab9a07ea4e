#include <fogline/app/command.h>       // breach
#include <fogline/pixels/open_scan.h>  // breach
#include <fogline/record/record_json.h>

#include <SQLiteCpp/SQLiteCpp.h>
