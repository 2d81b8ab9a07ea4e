// simulate_scan --kind NAME --seed N --out FILE: one invented scan and its truth.

#include "simulator/render.h"
#include "simulator/scenario_sampling.h"

#include <cstdlib>
#include <exception>
#include <iostream>
#include <map>
#include <stdexcept>
#include <string>

namespace {

int help(std::ostream& out) {
  out << "Usage: simulate_scan --kind NAME [--seed N] --out FILE\n"
         "Writes an invented scan of black-and-white negatives and FILE's truth beside it\n"
         "(NAME.truth.json), prints the scan's path. The kind decides TIFF, PNG or JPEG, and the\n"
         "path's ending follows it. Kinds:\n";
  for (const std::string& kind : filmsim::scenario_kinds()) out << "  " << kind << '\n';
  for (const std::string& kind : filmsim::foreign_kinds()) out << "  " << kind << '\n';
  return 0;
}

std::map<std::string, std::string> parsed(int argc, char** argv) {
  std::map<std::string, std::string> options = {{"--seed", "1"}};
  for (int i = 1; i < argc; i += 2) {
    const std::string name = argv[i];
    const bool known = name == "--kind" || name == "--seed" || name == "--out";
    if (!known || i + 1 >= argc) throw std::invalid_argument("can't use '" + name + "'");
    options[name] = argv[i + 1];
  }
  if (!options.contains("--kind") || !options.contains("--out")) {
    throw std::invalid_argument("--kind and --out are needed");
  }
  return options;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc == 2 && std::string(argv[1]) == "--help") return help(std::cout);
  try {
    const auto options = parsed(argc, argv);
    const std::uint64_t seed = std::stoull(options.at("--seed"));
    const auto simulated = render(filmsim::sample_scenario(options.at("--kind"), seed));
    std::cout << write_scan(simulated, options.at("--out")) << '\n';
  } catch (const std::exception& error) {
    std::cerr << "simulate_scan: " << error.what() << "; --help tells more\n";
    return 2;
  }
  return 0;
}
