#include "mainbore/mechanics/bar_marks.hpp"

#include "precondition.hpp"

namespace mainbore::mechanics {

BarMarks bar_marks(const PipeRange& pipe, const BarTool& tool) {
  require(is_positive(pipe.least_od) && is_positive(pipe.planned_od),
          "bar_marks: an outside diameter must be positive");
  require(is_positive(pipe.least_wall) && is_positive(pipe.greatest_wall) && is_positive(pipe.farthest_wall),
          "bar_marks: a wall must be positive");
  require(pipe.greatest_wall + pipe.farthest_wall < pipe.least_od, "bar_marks: the walls must leave a bore");
  require(is_positive(tool.width) && is_not_negative(tool.beyond), "bar_marks: the tool must have a width");
  for (const auto& length : {tool.lead, tool.tap_depth, tool.found_by_trial, tool.length, tool.insertion_length})
    require(is_not_negative(length.value_or(Length())), "bar_marks: a measured length must not be negative");

  BarMarks marks;
  marks.breakthrough = pipe.least_wall;
  marks.full_width = drill_stroke({pipe.planned_od, pipe.greatest_wall}, tool.width, tool.point, tool.beyond);
  marks.catches = tool.lead;
  if (tool.found_by_trial) marks.stop_tapping = tool.found_by_trial;
  else if (tool.lead && tool.tap_depth) marks.stop_tapping = *tool.lead + *tool.tap_depth;
  marks.far_wall = pipe.least_od - pipe.farthest_wall;
  if (tool.length && tool.insertion_length) marks.stop_touches = *tool.length - *tool.insertion_length;
  return marks;
}

}  // namespace mainbore::mechanics
