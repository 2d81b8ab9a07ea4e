#include "calibration_csv.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <optional>
#include <stdexcept>

namespace bench {
namespace {

void write_conditions(std::ofstream& out, const CalibrationCase& item) {
  const filmsim::WedgePlan& wedge = item.plan.wedge;
  const filmsim::ScannerSettings& scanner = wedge.scanner;
  const auto greatest = [](const filmsim::Rgb& of) {
    return std::max({std::abs(of[0]), std::abs(of[1]), std::abs(of[2])});
  };
  out << item.seed << ',' << item.large << ',' << item.like_silver << ',' << item.bits << ','
      << wedge.encoding.channels << ',' << item.device << ',' << scanner.callier << ','
      << wedge.callier << ',' << scanner.glare.share << ',' << scanner.glare.narrow_part << ','
      << scanner.black_offset << ',' << greatest(scanner.tilt_x) << ',' << greatest(scanner.tilt_y)
      << ',' << scanner.bulge << ',' << scanner.response.power[1] << ',' << scanner.response.curl
      << ',' << scanner.response.shoulder << ',' << scanner.response.floor << ','
      << scanner.adc_bits << ',' << wedge.bare_mm << ',' << wedge.densities.size() << ','
      << item.steps_to_find << ',' << item.steps_found << ',' << item.reference_right << ','
      << item.stray_error << ',' << item.stray_doubt << ',' << item.stray_measured << ','
      << item.limit << ',' << item.residual_rms << ','
      << item.trouble.substr(0, item.trouble.find(',')) << ',';
}

}  // namespace

void write_calibration_csv(const std::string& path, const std::vector<CalibrationCase>& cases) {
  std::ofstream out(path);
  out << "seed,large,like_silver,bits,channels,device,callier,callier,glare,narrow,offset,"
         "tilt_x,tilt_y,bulge,power,curl,shoulder,floor,adc,bare_mm,count,to_find,found,right,"
         "stray_error,stray_doubt,stray_measured,limit,residual,trouble,kind,truth,value,u95,at_"
         "least\n";
  for (const CalibrationCase& item : cases) {
    const auto write = [&](const char* kind, const std::optional<Compared>& number) {
      if (number) {
        write_conditions(out, item);
        out << kind << ',' << number->truth << ',' << number->value << ',' << number->u95 << ','
            << number->at_least << '\n';
      }
    };
    for (const Compared& patch : item.patches) {
      write("patch", patch);
    }
    for (const Compared& patch : item.patches_uncalibrated) {
      write("patch-without", patch);
    }
    write("base-fog", item.strip.base_fog);
    write("base-fog-without", item.strip_uncalibrated.base_fog);
    constexpr std::array<const char*, 4> tones{"shadow", "middle", "highlight", "range"};
    for (std::size_t i = 0; i < tones.size(); ++i) {
      write(tones[i], item.strip.tone[i]);
    }
    write("contrast", item.strip.contrast);
    if (item.patches.empty() && !item.strip.base_fog) {
      write("none", Compared{});
    }
  }
  out.flush();
  if (!out) {
    throw std::runtime_error(path + " can't be written");
  }
}

}  // namespace bench
