// The parts of a plan that only some jobs ask for, as JSON.
#pragma once

#include <functional>
#include <span>

#include "io/text/json_writer.hpp"
#include "mainbore/plan.hpp"

namespace mainbore::io {

// Writes "how" and "sources" into the object that is open, and remembers the sources for the end of the document.
using WriteBases = std::function<void(std::span<const Basis* const>)>;

void write_open_hole(JsonWriter& out, const OpenHole& hole, UnitSystem system);
void write_service(JsonWriter& out, const ServicePlan& service, UnitSystem system, const WriteBases& bases);
void write_cleaning(JsonWriter& out, const CleaningPlan& cleaning, UnitSystem system, const WriteBases& bases);
void write_pit(JsonWriter& out, const PitPlan& pit, UnitSystem system);
void write_not_checked(JsonWriter& out, const Plan& plan);

}  // namespace mainbore::io
