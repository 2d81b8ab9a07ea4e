#include <fogline/marks/spot.h>
#include <fogline/process/findings.h>  // breach
#include <sqlite3.h>  // breach
