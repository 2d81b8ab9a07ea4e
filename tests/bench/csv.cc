#include "csv.h"

#include <algorithm>
#include <fstream>
#include <stdexcept>

namespace bench {

namespace {

constexpr std::array compared_names{"base_fog",   "base_fog_red", "base_fog_green", "base_fog_blue",
                                    "edge_print", "leader",       "shadow",         "middle",
                                    "highlight",  "range",        "contrast"};

using AllCompared = std::array<std::optional<Compared>, compared_names.size()>;

AllCompared all_compared(const ScanCase& scan) {
  const auto& channels = scan.base_fog_channels;
  return {scan.base_fog, channels[0],  channels[1],  channels[2],  scan.edge_print, scan.leader,
          scan.tone[0],  scan.tone[1], scan.tone[2], scan.tone[3], scan.contrast};
}

void write_head(std::ostream& out) {
  out << "kind,seed,read,trouble,device,bits,expected_fitness,fitness,holes_seen,tone_verdict,"
         "frames_to_find,frames_found,frames_invented,frames_doubled,blanks_true,blanks_right,"
         "blanks_wrong,"
         "format_right,strips_right,holes_whole,holes_missed,holes_surplus,scale_error,"
         "rotation_error_deg,base_fog_between_holes_error,base_fog_limit_error,film_found,holes_"
         "told,"
         "frames_found_at_iou_08,impossible,wrong_tints,peak_mb,measure_s";
  for (const char* name : compared_names) {
    out << ',' << name << "_true," << name << ',' << name << "_u95," << name << "_at_least," << name
        << "_covered";
  }
  out << '\n';
}

template <typename Value>
void write_if(std::ostream& out, const std::optional<Value>& value) {
  out << ',';
  if (value) {
    out << *value;
  }
}

void write_row(std::ostream& out, const ScanCase& scan) {
  constexpr std::array verdicts{"told", "right", "near", "wrong", "left-open"};
  std::string trouble = scan.trouble;
  std::replace(trouble.begin(), trouble.end(), '"', '\'');
  out << scan.name.kind << ',' << scan.name.seed << ',' << scan.read << ",\"" << trouble << "\","
      << scan.device << ',' << scan.bits << ',' << scan.expected_fitness << ',' << scan.fitness
      << ',' << scan.holes_seen << ',' << verdicts[static_cast<std::size_t>(scan.tone_verdict)]
      << ',' << scan.frames_to_find << ',' << scan.frames_found << ',' << scan.frames_invented
      << ',' << scan.frames_doubled << ',' << scan.blanks_true << ',' << scan.blanks_right << ','
      << scan.blanks_wrong << ',' << scan.format_right << ',' << scan.strips_right << ','
      << scan.holes_whole << ',' << scan.holes_missed << ',' << scan.holes_surplus;
  write_if(out, scan.scale_error);
  write_if(out, scan.rotation_error);
  write_if(out, scan.base_fog_between_holes);
  write_if(out, scan.base_fog_limit);
  const Glance& glance = scan.glance;
  out << ',' << glance.film_found << ',' << glance.holes_told << ',' << glance.frames_found << ','
      << glance.impossible.size() << ',' << glance.wrong_tints.size() << ',' << scan.peak_mb << ','
      << scan.measure_s;
  for (const std::optional<Compared>& one : all_compared(scan)) {
    if (one) {
      out << ',' << one->truth << ',' << one->value << ',' << one->u95 << ',' << one->at_least
          << ',' << one->covers();
    } else {
      out << ",,,,,";
    }
  }
  out << '\n';
}

}  // namespace

void write_csv(const std::string& path, const std::vector<ScanCase>& cases) {
  std::ofstream out(path);
  write_head(out);
  for (const ScanCase& scan : cases) {
    write_row(out, scan);
  }
  out.close();
  if (!out) {
    throw std::runtime_error("can't write " + path);
  }
}

}  // namespace bench
