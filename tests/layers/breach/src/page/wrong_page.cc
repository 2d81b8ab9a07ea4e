#include "words/verdict.h"
#include <fogline/record/record_json.h>
#include <nlohmann/json.hpp>  // breach
#include "terminal/text.h"  // breach
#include <fogline/logbook/logbook.h>  // breach
#include <png.h>  // breach

void show() { std::puts("prints"); }  // breach
