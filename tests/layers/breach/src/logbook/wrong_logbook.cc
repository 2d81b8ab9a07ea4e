#include <SQLiteCpp/SQLiteCpp.h>
#include <fogline/record/roll_record.h>
#include <fogline/app/command.h>  // breach
#include <fogline/pixels/open_scan.h>  // breach
