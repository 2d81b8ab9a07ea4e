#include "process/advice/further_measurement.h"

#include "process/belief/weigh_light_and_time.h"
#include "process/invented_reading.h"
#include "tables/shipped_knowledge.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

std::optional<FurtherMeasurement> asked(const invented::RollNumbers& numbers, bool calibrated) {
  RollMeasurement roll = invented::roll_of(numbers);
  if (!calibrated) {
    roll.scans[0].fitness = Fitness::comparable;
  }
  return weigh_light_and_time(roll, invented::usual_aim(), shipped_knowledge().population, nullptr)
      .would_tell_most;
}

TEST(FurtherMeasurement, PrintInSightIsWorthComparing) {
  invented::RollNumbers numbers;
  numbers.edge_print = 0.9;
  numbers.frames = 36;
  numbers.leader = 2.3;
  EXPECT_EQ(asked(numbers, true), FurtherMeasurement::compare_frame_numbers);
}

TEST(FurtherMeasurement, WallsWhereTheRollHasNoMoreToGive) {
  invented::RollNumbers numbers;
  numbers.frames = 36;
  numbers.format = FilmFormat::f120;
  EXPECT_EQ(asked(numbers, true), FurtherMeasurement::meter_walls);
}

TEST(FurtherMeasurement, LoggedPrintIsNotAskedForAgain) {
  RollMeasurement roll = invented::roll_of({});
  roll.scans[0].edge_print = invented::read_as(1.28);
  const auto measurement =
      weigh_light_and_time(roll, invented::usual_aim(), invented::with_logged_print(1.0), nullptr)
          .would_tell_most;
  ASSERT_TRUE(measurement);
  EXPECT_NE(*measurement, FurtherMeasurement::compare_frame_numbers);
}

}  // namespace
}  // namespace fogline
