#include <iostream>

#include <boost/program_options.hpp>
#include <fogline/pixels/open_scan.h>
#include <fogline/logbook/logbook.h>
#include <fogline/terminal/text.h>

int main() { std::exit(0); }
