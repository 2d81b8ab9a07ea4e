#include <nlohmann/json.hpp>
#include <fogline/logbook/logbook.h>  // breach
#include <png.h>  // breach

void show() { std::puts("prints"); }  // breach
