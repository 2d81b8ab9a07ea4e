#include <SQLiteCpp/SQLiteCpp.h>
#include <fogline/record/roll_record.h>
#include <fogline/app/command.h>  // breach
#include <fogline/io/open_scan.h>  // breach
