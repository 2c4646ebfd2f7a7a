// The formulas of a calculation sheet, in symbols, as data.
//
// A formula is read from left to right: assignments with semicolons between, the last of which is the result. It has + - *
// / ^, brackets, and sqrt, hypot, sin, cos, tan, asin, acos, atan2, abs, min, max, ceil, floor, pi; friction(Re, e) is Darcy's
// factor (hydraulics/friction.hpp): 64/Re to Re = 2000, Colebrook's from 4000 on, a straight line between. Every quantity
// carries its unit, so that a formula holds in any system; in, ft, mm, psi, lbf, N, gpm, gal, deg and s in a formula are
// units. What is worked out by a table or a search stands there as a figure.
//
//     text_of(Formula::bar_push).text    -> "F = p * pi / 4 * d^2"
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

namespace mainbore {

// MAINBORE_FORMULA(enumerator, "id", "what it is of", "formula", "public header", symbols: {"symbol", "what it is"} ...)
#define MAINBORE_FORMULAS(X) \
  X(wall_by_table, "wall-by-table", "Least wall of the class", "t = t_c - m", "plan.hpp", \
    {"t_c", "wall of the class"}, {"m", "how far it may lie below"}) \
  X(wall_by_gauge, "wall-by-gauge", "Least wall by the gauge", "t = max(t_g - e, 0 in)", "plan.hpp", \
    {"t_g", "wall as gauged"}, {"e", "error of the gauge"}) \
  X(derated_rating, "derated-rating", "Rating of warm plastic", "P = k * P_r", "mechanics/rating.hpp", \
    {"k", "factor at the pipe's temperature"}, {"P_r", "rating of the class"}) \
  X(tap_size, "tap-size", "Tap against the largest permitted", "d = d_t", "rules.hpp", {"d_t", "tap planned"}) \
  X(hole_ratio, "hole-ratio", "Hole over the diameter of the pipe", "k = d / D", "mechanics/section.hpp", \
    {"d", "hole"}, {"D", "least outside diameter"}) \
  X(section_left, "section-left", "Section modulus left beside the hole", \
    "h = d / D; c = 1 - 2 * w; g = min(h, c); A_0 = pi * (1 - c^2); I_0 = A_0 * (1 + c^2) / 4; " \
    "A_1 = h * sqrt(1 - h^2) + asin(h); A_2 = g * sqrt(c^2 - g^2) + c^2 * asin(g / c); A = A_0 - A_1 + A_2; " \
    "S = h - h^3 / 3 - c^2 * g + g^3 / 3; y = S / A; " \
    "I = I_0 - (h * (1 - h^2)^1.5 / 2 + 3 / 4 * A_1) / 3 + (g * (c^2 - g^2)^1.5 / 2 + 3 / 4 * c^2 * A_2) / 3 - S * " \
    "y; " \
    "k = I / max(sqrt(1 - h^2) + y, 1 - y) / I_0", \
    "mechanics/section.hpp", {"d", "hole"}, {"D", "least outside diameter"}, {"w", "wall over diameter, judged at"}) \
  X(threads_in_wall, "threads-in-wall", "Complete threads in the wall", \
    "R = D / 2; r = d / 2; u = R - sqrt(R^2 - r^2); n = max(t - u, 0 in) / p", "mechanics/engagement.hpp", \
    {"D", "outside diameter"}, {"d", "largest diameter of the thread"}, {"t", "wall"}, {"p", "pitch of the thread"}) \
  X(wall_needed, "wall-needed", "Wall for the threads required", \
    "R = D / 2; r = d / 2; u = R - sqrt(R^2 - r^2); t = n * p + u", "mechanics/engagement.hpp", \
    {"D", "least outside diameter"}, {"d", "largest diameter of the thread"}, {"n", "threads required"}, \
    {"p", "pitch of the thread"}) \
  X(wall_to_read, "wall-to-read", "What the gauge must read, to the hundredth", \
    "t = ceil((t_n + e) / (0.01 in)) * 0.01 in", "stop_number.hpp", {"t_n", "wall needed"}, \
    {"e", "error of the gauge"}) \
  X(class_to_read, "class-to-read", "What a sound pipe of the class reads, to the hundredth", \
    "t = ceil((t_c - m + e) / (0.01 in)) * 0.01 in", "stop_number.hpp", {"t_c", "wall of the class"}, \
    {"m", "how far it may lie below"}, {"e", "error of the gauge"}) \
  X(plastic_to_read, "plastic-to-read", "What a pipe of the class reads, to the hundredth", \
    "t = floor((t_c - m) / (0.01 in)) * 0.01 in", "stop_number.hpp", {"t_c", "least wall of the class"}, \
    {"m", "how far it may lie below"}) \
  X(pressure_end_load, "pressure-end-load", "Push of the line on the stop", "F = p * pi / 4 * (E + h)^2", \
    "mechanics/stripping.hpp", {"p", "line pressure"}, {"E", "pitch diameter in the gauge plane"}, \
    {"h", "height of the thread"}) \
  X(hand_tight, "hand-tight", "Stop in by hand", "x = L - (n_w + n_s) * p", "mechanics/makeup.hpp", \
    {"L", "effective thread"}, {"n_w", "turns by wrench"}, {"n_s", "threads left showing"}, \
    {"p", "pitch of the thread"}) \
  X(past_gauge, "past-gauge", "Tap stopped past gauge", "g = x - L_1", "mechanics/makeup.hpp", \
    {"x", "stop in by hand"}, {"L_1", "engagement by hand"}) \
  X(tap_depth, "tap-depth", "Depth of the tap's point", "z = L_1 + v + g", "mechanics/makeup.hpp", \
    {"L_1", "engagement by hand"}, {"v", "tap out of the ring gauge"}, {"g", "past gauge"}) \
  X(stop_in_bore, "stop-in-bore", "End of the stop inside the bore", "b = x + n_w * p - t", "mechanics/makeup.hpp", \
    {"x", "stop in by hand"}, {"n_w", "turns by wrench"}, {"p", "pitch of the thread"}, {"t", "wall"}) \
  X(tool_depth, "tool-depth", "Depth of the tool's end", "z = max(f, a) + y", "mechanics/makeup.hpp", {"f", "stroke"}, \
    {"a", "tool ahead of the tap's first thread"}, {"y", "depth of the tap"}) \
  X(cutter_depth, "cutter-depth", "Depth of the pilot's end", "z = f + a", "mechanics/makeup.hpp", \
    {"f", "stroke of the teeth"}, {"a", "pilot ahead of the teeth"}) \
  X(trial_depth, "trial-depth", "Depth of the tool's end by the trial", "z = max(y, f)", "mechanics/makeup.hpp", \
    {"y", "depth found by trial"}, {"f", "stroke"}) \
  X(far_wall, "far-wall", "Clear of the far wall", "c = D - t_f - z", "mechanics/bar_marks.hpp", \
    {"D", "least outside diameter"}, {"t_f", "far wall at its thickest"}, {"z", "depth of the tool's end"}) \
  X(equal_taps, "equal-taps", "Taps for one larger", "n = ceil((d_1 / d)^e)", "hydraulics/equal_capacity.hpp", \
    {"d_1", "tap asked for"}, {"d", "tap of each"}, {"e", "exponent"}) \
  X(barrel_needed, "barrel-needed", "Barrel for the row of taps", "L = (n - 1) * b + 2 * c", \
    "hydraulics/equal_capacity.hpp", {"n", "taps"}, {"b", "distance between taps"}, {"c", "clear of each joint"}) \
  X(line_pressure, "line-pressure", "Line pressure against a limit", "p = p_l", "plan.hpp", {"p_l", "line pressure"}) \
  X(line_with_surge, "line-with-surge", "Line and surge in the pipe", "p = p_l + s_u", "plan.hpp", \
    {"p_l", "line pressure"}, {"s_u", "surge"}) \
  X(surge_allowed, "surge-allowed", "What the pipe bears with the surge", "P = k * P_r + a", "plan.hpp", \
    {"k", "factor"}, {"P_r", "rating of the pipe"}, {"a", "surge inside its class"}) \
  X(fitting_with_surge, "fitting-with-surge", "Line and surge on a fitting", "p = min(p_l, P_f) + s_u", "plan.hpp", \
    {"p_l", "line pressure"}, {"P_f", "rating of the fitting"}, {"s_u", "surge"}) \
  X(fitting_allowed, "fitting-allowed", "What the fitting bears with the surge", "P = k * P_f", "plan.hpp", \
    {"k", "factor"}, {"P_f", "rating of the fitting"}) \
  X(pressure_to_read, "pressure-to-read", "Most the gauge may show when tapping", "p = floor(P / (1 psi)) * 1 psi", \
    "stop_number.hpp", {"P", "lowest limit"}) \
  X(tape_least, "tape-least", "Least round the pipe, to the sixteenth", \
    "C = ceil((pi * (D - m) - e) / (0.0625 in)) * 0.0625 in", "stop_number.hpp", \
    {"D", "outside diameter of the table"}, {"m", "how far it may lie below"}, {"e", "error of the tape"}) \
  X(tape_most, "tape-most", "Most round the pipe, to the sixteenth", \
    "C = floor((pi * (D + m) + e) / (0.0625 in)) * 0.0625 in", "stop_number.hpp", \
    {"D", "outside diameter of the table"}, {"m", "how far it may lie above"}, {"e", "error of the tape"}) \
  X(bar_push, "bar-push", "Push of the line on the bar", "F = p * pi / 4 * d^2", "mechanics/boring.hpp", \
    {"p", "line pressure"}, {"d", "diameter of the bar"}) \
  X(drill_stroke, "drill-stroke", "Feed from touch to full width", \
    "R = D / 2 - t; r = d / 2; f = t + R - sqrt(R^2 - r^2) + r / tan(v / 2) + c", "mechanics/boring.hpp", \
    {"D", "outside diameter"}, {"t", "wall"}, {"d", "width of the tool"}, {"v", "angle of its point"}, \
    {"c", "past breakthrough"}) \
  X(drill_thrust, "drill-thrust", "Thrust of the drill, the higher of two methods", \
    "F_1 = (2 * W * (f / in)^0.8 * (d / in)^0.8 * B + W * (d / in)^2 * J) * lbf; " \
    "F_2 = 570 * k * (d / mm) * (f / mm)^0.85 * N; F = max(F_1, F_2)", \
    "mechanics/boring.hpp", {"d", "drill"}, {"f", "feed a turn"}, {"W", "work factor"}, \
    {"B", "thrust factor of the point"}, {"J", "chisel edge factor"}, {"k", "factor of cast iron"}) \
  X(travel_tool, "travel-tool", "Travel of the bar for the tool", "T = h + max(f, a) + z", "mechanics/boring.hpp", \
    {"h", "standoff"}, {"f", "stroke"}, {"a", "tool ahead of the tap's first thread"}, {"z", "depth of the tap"}) \
  X(travel_stop, "travel-stop", "Travel of the bar for the stop", "T = h + b - i + y", "mechanics/boring.hpp", \
    {"h", "standoff"}, {"b", "length of the tool"}, {"i", "length of the insertion tool with its stop"}, \
    {"y", "made up"}) \
  X(travel_saddle, "travel-saddle", "Travel of the bar through saddle and stop", "T = h + l + b + f", \
    "mechanics/boring.hpp", {"h", "saddle"}, {"l", "corporation stop"}, {"b", "adapter"}, {"f", "stroke"}) \
  X(chain_length, "chain-length", "Chain, hook to hook", \
    "R = (D + k) / 2; h = D / 2 + b; q = hypot(a, h); L = 2 * sqrt(q^2 - R^2) + 2 * R * (pi - atan2(a, h) - acos(R / " \
    "q))", \
    "mechanics/clamp.hpp", {"D", "outside diameter"}, {"k", "thickness of the chain"}, {"a", "anchor to the side"}, \
    {"b", "anchor over the crown"}) \
  X(chain_leg, "chain-leg", "Leg of the chain from upright", \
    "R = (D + k) / 2; h = D / 2 + b; v = pi / 2 - atan2(a, h) - acos(R / hypot(a, h))", "mechanics/clamp.hpp", \
    {"D", "outside diameter"}, {"k", "thickness of the chain"}, {"a", "anchor to the side"}, \
    {"b", "anchor over the crown"}) \
  X(chain_made_up, "chain-made-up", "Chain made up", "L = L_0 + n * x", "mechanics/clamp.hpp", {"L_0", "chain"}, \
    {"n", "extensions"}, {"x", "each"}) \
  X(gasket_needed, "gasket-needed", "Sealing circle that clears the hole", "G = d + 2 * b", "mechanics/clamp.hpp", \
    {"d", "hole"}, {"b", "sound pipe round the hole"}) \
  X(clamp_force, "clamp-force", "Force that holds and seals the machine", \
    "F = p * pi / 4 * G^2 + F_c + m * p * pi * G * w", "mechanics/clamp.hpp", {"p", "line pressure"}, \
    {"G", "sealing circle"}, {"F_c", "thrust of the tool"}, {"m", "gasket factor"}, {"w", "width of the gasket"}) \
  X(chain_tension, "chain-tension", "Tension in each leg of the chain", "T = F / (2 * cos(v))", "mechanics/clamp.hpp", \
    {"F", "force that holds the machine"}, {"v", "leg from upright"}) \
  X(stud_torque, "stud-torque", "Torque on the stud", "M = K * d * T", "mechanics/clamp.hpp", {"K", "nut factor"}, \
    {"d", "stud"}, {"T", "tension in each leg"}) \
  X(stud_stress, "stud-stress", "Tension over the section of a stud", "S = T / (pi / 4 * d^2)", "mechanics/clamp.hpp", \
    {"T", "tension in each leg"}, {"d", "stud"}) \
  X(ovality, "ovality", "Pipe out of round under the chain", "K = 4.47 * E / (D / t - 1)^3; o = F / w / K / (D - t)", \
    "mechanics/clamp.hpp", {"E", "modulus"}, {"D", "outside diameter"}, {"t", "least wall"}, \
    {"F", "force of the chain"}, {"w", "width it bears on"}) \
  X(breakthrough, "breakthrough", "Mark: breakthrough at the earliest", "f = t", "mechanics/bar_marks.hpp", \
    {"t", "least wall"}) \
  X(tap_catches, "tap-catches", "Mark: tap catches", "f = a", "mechanics/bar_marks.hpp", \
    {"a", "tool ahead of the tap's first thread"}) \
  X(stop_tapping, "stop-tapping", "Mark: stop tapping", "f = a + z", "mechanics/bar_marks.hpp", \
    {"a", "tool ahead of the tap's first thread"}, {"z", "depth of the tap"}) \
  X(stop_by_trial, "stop-by-trial", "Mark: stop tapping, by the trial", "f = y", "mechanics/bar_marks.hpp", \
    {"y", "depth found by trial"}) \
  X(tap_turns, "tap-turns", "Turns from where the tap catches", "n = z / p", "mechanics/makeup.hpp", \
    {"z", "depth of the tap"}, {"p", "pitch of the thread"}) \
  X(stop_touches, "stop-touches", "Mark: stop touches", "f = b - i", "mechanics/bar_marks.hpp", \
    {"b", "length of the tool"}, {"i", "length of the insertion tool with its stop"}) \
  X(never_past, "never-past", "Mark: never past", "f = D - t_f - c - a", "mechanics/bar_marks.hpp", \
    {"D", "least outside diameter"}, {"t_f", "far wall at its thickest"}, {"c", "clearance to the far wall"}, \
    {"a", "pilot ahead of the teeth"}) \
  X(stop_drawn_back, "stop-drawn-back", "Stop over the pipe, the bar back", "h = h_0 + b - i", \
    "mechanics/bar_marks.hpp", {"h_0", "standoff"}, {"b", "length of the tool"}, \
    {"i", "length of the insertion tool with its stop"}) \
  X(valve_clear, "valve-clear", "Mark: bar back, valve swings", "h = h_v", "mechanics/bar_marks.hpp", \
    {"h_v", "where the machine's valve swings clear"}) \
  X(stop_clear, "stop-clear", "Mark: bar back, clear of the stop", "h = h_s + b", "mechanics/bar_marks.hpp", \
    {"h_s", "saddle"}, {"b", "corporation stop"}) \
  X(distance_kept, "distance-kept", "Distance kept along the main", "k = abs(x - x_0)", "plan.hpp", \
    {"x", "where it is"}, {"x_0", "place planned"}) \
  X(open_hole_flow, "open-hole-flow", "Water through the open hole", \
    "Q = c * pi / 4 * d^2 * sqrt(2 * 32.174 * ft / s^2 * p / (w / ft))", "hydraulics/open_jet.hpp", \
    {"c", "discharge of a short tube"}, {"d", "hole"}, {"p", "line pressure"}, {"w", "pressure of a foot of water"}) \
  X(jet_force, "jet-force", "Push of the jet", "F = 2 * c * c_v * pi / 4 * d^2 * p", "hydraulics/open_jet.hpp", \
    {"c", "discharge of a short tube"}, {"c_v", "its speed"}, {"d", "hole"}, {"p", "line pressure"}) \
  X(demand, "demand", "Flow that the service must carry", "Q = max(Q_d, Q_s)", "hydraulics/demand.hpp", \
    {"Q_d", "fixtures, or as given"}, {"Q_s", "sprinklers"}) \
  X(friction_by_c, "friction-by-c", "Friction by Hazen and Williams", \
    "h = 4.52 * psi * (L / ft) * (Q / gpm / C)^1.852 / (d / in)^4.8704", "hydraulics/friction.hpp", \
    {"L", "length, or counted as"}, {"Q", "flow"}, {"C", "roughness by C"}, {"d", "bore"}) \
  X(friction_by_roughness, "friction-by-roughness", "Friction by Darcy and Weisbach", \
    "v = Q / (pi / 4 * d^2); k = friction(v * d / (y * 0.00001 * ft^2 / s), e / d); " \
    "h = k * L / d * v^2 / (2 * 32.174 * ft / s^2) * w / ft", \
    "hydraulics/friction.hpp", {"L", "length, or counted as"}, {"Q", "flow"}, {"d", "bore"}, {"e", "roughness"}, \
    {"y", "viscosity, in hundred thousandths of a square foot a second"}, {"w", "pressure of a foot of water"}) \
  X(meter_loss, "meter-loss", "Loss of the meter, from its table", "h = h_m", "hydraulics/minor_loss.hpp", \
    {"h_m", "loss at the flow"}) \
  X(rise_loss, "rise-loss", "Pressure that the rise costs", "h = w * z / ft", "hydraulics/minor_loss.hpp", \
    {"w", "pressure of a foot of water"}, {"z", "rise"}) \
  X(residual, "residual", "Pressure left for the customer", "p = p_0 - h_c - h_k - h_l - h_f - h_m - h_z", \
    "service_plan.hpp", {"p_0", "lowest line pressure"}, {"h_c", "tap and corporation stop"}, {"h_k", "curb stop"}, \
    {"h_l", "line"}, {"h_f", "fittings"}, {"h_m", "meter"}, {"h_z", "rise"}) \
  X(water_speed, "water-speed", "Speed of the water in the line", "v = Q / (pi / 4 * d^2)", "hydraulics/pipe.hpp", \
    {"Q", "flow"}, {"d", "bore"}) \
  X(tap_speed, "tap-speed", "Speed of the water in the tap and its stop", "v = Q / n / (pi / 4 * d^2)", \
    "hydraulics/pipe.hpp", {"Q", "flow"}, {"n", "taps"}, {"d", "tap, as wide as its name"}) \
  X(line_over_tap, "line-over-tap", "Service pipe larger than the tap", "k = d_l - d_t", "rules.hpp", \
    {"d_l", "size of the service pipe"}, {"d_t", "tap"}) \
  X(customer_pressure, "customer-pressure", "Line pressure at the customer's", "p = p_l - w * z / ft", \
    "hydraulics/minor_loss.hpp", {"p_l", "line pressure"}, {"w", "pressure of a foot of water"}, {"z", "rise"}) \
  X(meter_flow, "meter-flow", "Flow through the meter", "Q = Q_d", "service_plan.hpp", {"Q_d", "flow"}) \
  X(meter_share, "meter-share", "Share of the meter's greatest flow", "Q = k * Q_m", "service_plan.hpp", \
    {"k", "share"}, {"Q_m", "greatest flow of the meter"}) \
  X(swab_stock, "swab-stock", "Stock in the swabbing solution", "V = V_0 * c / c_0", "sanitary/dilution.hpp", \
    {"V_0", "solution made"}, {"c", "strength wanted"}, {"c_0", "strength of the stock"}) \
  X(swab_dry, "swab-dry", "Dry product in the swabbing solution", "W = 8.34 * lbf / gal * V_0 * c / c_0", \
    "sanitary/dilution.hpp", {"V_0", "solution made"}, {"c", "strength wanted"}, {"c_0", "chlorine in the product"}) \
  X(flush_flow, "flush-flow", "Flow of the flush", "Q = v * pi / 4 * d^2", "sanitary/flushing.hpp", {"v", "speed"}, \
    {"d", "bore"}) \
  X(flush_volume, "flush-volume", "Water of the flush", "V = n * pi / 4 * d^2 * L", "sanitary/flushing.hpp", \
    {"n", "changes of the water"}, {"d", "bore"}, {"L", "length of the line"}) \
  X(flush_time, "flush-time", "Time of the flush", "t = V / Q", "sanitary/flushing.hpp", {"V", "water of the flush"}, \
    {"Q", "flow of the flush"}) \
  X(dechlorination, "dechlorination", "Product that takes the chlorine out", \
    "W = 8.34 * lbf / gal * V * c * 0.000001 * k * (1 + x)", "sanitary/dechlorination.hpp", \
    {"V", "water of the flush"}, {"c", "chlorine in it, in milligrams a liter"}, \
    {"k", "product to a part of chlorine"}, {"x", "excess"}) \
  X(fill_chlorine, "fill-chlorine", "Chlorine that fills the line at a dose", \
    "W = 8.34 * lbf / gal * pi / 4 * d^2 * L * c * 0.000001", "sanitary/dilution.hpp", {"d", "bore"}, \
    {"L", "length of the line"}, {"c", "dose, in milligrams a liter"}) \
  X(fill_dry, "fill-dry", "Dry product with that chlorine", "W = W_c / s", "sanitary/dilution.hpp", \
    {"W_c", "chlorine"}, {"s", "chlorine in the product"}) \
  X(fill_liquid, "fill-liquid", "Liquid with that chlorine, by the jug", "V = W_c / (8.34 * lbf / gal * s)", \
    "sanitary/dilution.hpp", {"W_c", "chlorine"}, {"s", "chlorine in 100 mL, in grams"}) \
  X(fill_by_weight, "fill-by-weight", "Liquid with that chlorine, on a scale", "W = W_c / (s * 70.906 / 74.442)", \
    "sanitary/dilution.hpp", {"W_c", "chlorine"}, {"s", "sodium hypochlorite in the liquid, by weight"}) \
  X(fill_dechlorination, "fill-dechlorination", "Product that takes that chlorine out", "W = W_c * k * (1 + x)", \
    "sanitary/dechlorination.hpp", {"W_c", "chlorine"}, {"k", "product to a part of chlorine"}, {"x", "excess"}) \
  X(pit_depth, "pit-depth", "Depth of the pit", "d = c + D + b", "excavation/pit.hpp", {"c", "cover"}, \
    {"D", "greatest outside diameter"}, {"b", "room below"}) \
  X(pit_across, "pit-across", "Pit across the main, at the bottom", "w = a + D + b", "excavation/pit.hpp", \
    {"a", "room at the far side"}, {"D", "greatest outside diameter"}, {"b", "room at the machine's side"}) \
  X(pit_top, "pit-top", "Pit at the top", "w_t = w + 2 * z * d", "excavation/pit.hpp", {"w", "at the bottom"}, \
    {"z", "slope, run to rise"}, {"d", "depth"}) \
  X(pit_volume, "pit-volume", "Ground to be dug", "V = l * w * d + z * d^2 * (l + w) + 4 / 3 * z^2 * d^3", \
    "excavation/pit.hpp", {"l", "pit along the main"}, {"w", "across it"}, {"d", "depth"}, \
    {"z", "slope, run to rise"}) \
  X(loose_volume, "loose-volume", "Spoil, loose", "V = V_b * (1 + k)", "excavation/pit.hpp", \
    {"V_b", "ground to be dug"}, {"k", "swell"}) \
  X(spoil_height, "spoil-height", "Height of the spoil pile", "h = sqrt(V / l / z)", "excavation/pit.hpp", \
    {"V", "spoil, loose"}, {"l", "length of the pile"}, {"z", "its slope, run to rise"}) \
  X(strip_taken, "strip-taken", "Strip taken from the middle of the main", "b = w_t / 2 + k + 2 * z * h", \
    "excavation/pit.hpp", {"w_t", "pit at the top"}, {"k", "spoil back from the edge"}, \
    {"z", "slope of the pile, run to rise"}, {"h", "its height"}) \
  X(ladder, "ladder", "Ladder, by the foot", "l = ceil(sqrt(17) / 4 * (d + e) / (1 ft)) * 1 ft", \
    "excavation/thresholds.hpp", {"d", "depth of the pit"}, {"e", "reach over the edge"}) \
  X(zone, "zone", "Half of the zone dug by hand", "b = D / 2 + m", "excavation/tolerance_zone.hpp", \
    {"D", "greatest outside diameter"}, {"m", "either side of the marks"})

enum class Formula : std::uint8_t {
#define MAINBORE_FORMULA(name, id, of, text, header, ...) name,
  MAINBORE_FORMULAS(MAINBORE_FORMULA)
#undef MAINBORE_FORMULA
};

struct FormulaSymbol {
  std::string_view name;
  std::string_view what;
};

struct FormulaText {
  std::string_view id;  // only grow
  std::string_view title;
  std::string_view text;
  std::string_view header;               // under include/mainbore, its reference
  std::array<FormulaSymbol, 7> symbols;  // of what goes in; the rest are empty
};

inline constexpr std::array formula_texts = {
#define MAINBORE_FORMULA(name, id, of, text, header, ...) FormulaText{id, of, text, header, {{__VA_ARGS__}}},
    MAINBORE_FORMULAS(MAINBORE_FORMULA)
#undef MAINBORE_FORMULA
};

[[nodiscard]] constexpr const FormulaText& text_of(Formula formula) {
  return formula_texts[static_cast<std::size_t>(formula)];
}
[[nodiscard]] constexpr std::size_t inputs_of(Formula formula) {
  std::size_t count = 0;
  for (const FormulaSymbol& symbol : text_of(formula).symbols) count += symbol.name.empty() ? 0 : 1;
  return count;
}

}  // namespace mainbore
