// Jobs whose sheets differ: by method, by size, by what is known.
#pragma once

#include <string_view>
#include <vector>

#include "unit/planning/jobs.hpp"

namespace mainbore::test {

struct NamedJob {
  std::string_view name;
  Job job;
};

inline std::vector<NamedJob> sheet_jobs() {
  std::vector<NamedJob> jobs;
  const auto add = [&](std::string_view name) -> Job& {
    jobs.push_back({name, sound_job()});
    jobs.back().job.service.thread = ThreadStandard::npt;
    return jobs.back().job;
  };
  add("ductile iron").service.size = NominalSize::inches(0.75);
  Job& large = add("large ductile iron");
  large.main.size = NominalSize::inches(24);
  large.main.class_name = "PC 200";
  large.service.size = NominalSize::inches(2);
  large.nearby = {{NearbyThing::joint, 1.0 * units::foot, {}, {}}, {NearbyThing::valve, 40.0 * units::foot, {}, {}}};
  Job& old = add("old cast iron");
  old.main = {};
  old.main.material = Material::cast_iron;
  old.main.size = NominalSize::inches(6);
  old.main.pressure = 64.0 * units::psi;
  old.nearby.reset();
  old.machine.given = nullptr;
  Job& plastic = add("PVC");
  plastic.main.material = Material::pvc;
  plastic.main.standard = "C900";
  plastic.main.class_name = "DR 14";
  plastic.service.thread = ThreadStandard::awwa_taper;
  Job& saddle = add("PVC by saddle");
  saddle.main.material = Material::pvc;
  saddle.main.size = NominalSize::inches(4);
  saddle.main.standard = "C900";
  saddle.main.class_name = "DR 18";
  Job& cement = add("asbestos cement");
  cement.main.material = Material::asbestos_cement;
  cement.main.class_name = "Class 150";
  add("not water").main.carries = Carries::reclaimed_water;
  Job& powered = add("powered feed");
  powered.main.pressure = 135.0 * units::psi;
  powered.machine.feed = Feed::powered;
  powered.service.clock = ClockPosition{630};
  add("sleeve").service.size = NominalSize::inches(4);
  add("dry").main.pressurized = false;
  Job& dug = add("pit and service");
  dug.main.cover = 5.0 * units::foot;
  dug.excavation.protection = Protection::slope;
  dug.service.line.material = Tubing::polyethylene;
  dug.service.line.length = 60.0 * units::foot;
  dug.service.demand.flow = 12.0 * units::gpm;
  return jobs;
}

}  // namespace mainbore::test
