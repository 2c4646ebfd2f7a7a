// A clean tap: what to mix, how long to flush, what to give the flushed water.
//
// sanitary/*.hpp have the formulas. Present in a plan whose job gives sanitary facts or the line that is to be flushed.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "mainbore/sanitary/concentration.hpp"
#include "mainbore/sanitary/dilution.hpp"
#include "mainbore/sanitary/flushing.hpp"
#include "mainbore/service_tables.hpp"
#include "mainbore/units.hpp"

namespace mainbore {

// For swabbing and spraying pipe, cutter and stop. Liquid stock is measured by volume, dry stock by weight.
struct SwabMix {
  sanitary::Concentration stock;
  sanitary::Concentration wanted;
  bool stock_assumed = false;  // the weakest household bleach
  Volume finished;
  std::optional<sanitary::Dilution> liquid;
  std::optional<Force> dry;  // of product, dissolved in the whole volume

  // As it stands on a jug: US fluid ounces of stock to a gallon, milliliters to a liter of finished solution.
  [[nodiscard]] double fluid_ounces_per_gallon() const { return liquid ? 128.0 * (liquid->stock / finished) : 0.0; }
  [[nodiscard]] double milliliters_per_liter() const { return liquid ? 1000.0 * (liquid->stock / finished) : 0.0; }
};

struct AgentDose {
  const DechlorinationAgent* agent = nullptr;
  Force weight;  // for all of the flush water
};

struct FlushPlan {
  sanitary::Flushing full;   // at the speed that carries dirt out
  sanitary::Flushing least;  // at the speed below which it only rinses
  double changes = 0.0;
  Flow available;                    // to waste at the end of the line, before the meter
  sanitary::Concentration chlorine;  // taken to be in it, at most
  std::vector<AgentDose> agents;     // any one of them
};

// What puts the chlorine into the line: a dry product by weight, a liquid by volume or by weight, as its label has it. Weights and volumes are exact; what a
// crew reads is rounded up to what it can measure.
struct FillProduct {
  std::string_view name;  // "12.5 % liquid"
  sanitary::Concentration strength;
  std::optional<Force> weight;   // of a dry product; of a liquid, where its label gives sodium hypochlorite by weight
  std::optional<Volume> volume;  // of a liquid, where its label gives chlorine by volume, which is the more of the two
};

// The line filled at one dose, and what takes the chlorine out again when it is let go.
struct FillPlan {
  const ChlorineDose* dose = nullptr;
  Force chlorine;                     // available, in the whole line
  std::vector<FillProduct> products;  // any one of them; that of the job first
  std::vector<AgentDose> agents;      // any one of them, for all of the water at the full dose
};

struct CleaningPlan {
  SwabMix swab;
  std::optional<FlushPlan> flush;
  bool as_main = false;                    // so large that it is filled with chlorine and sampled
  std::vector<const ChlorineDose*> doses;  // then: any one of them
  std::vector<FillPlan> fills;             // the same, where the line is known; of a whole plan
};

}  // namespace mainbore
