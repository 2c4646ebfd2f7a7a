// What a batch says of one order, on one line: the verdict, compact enough to gate a thousand orders on.
//
//     {"row":2,"line":3,"id":"AV-3002","verdict":"hold","waits_for":"site","method":"direct",
//      "tap":{"value":0.75,"unit":"in"},"limit":{"value":85,"unit":"psi"},"holds":["place.not-looked"],"stops":[]}
//     {"row":3,"line":4,"id":"AV-3003","verdict":"unreadable","reasons":[{"code":"job.no-unit","path":"/main/size",
//      "line":4,"column":17,"message":"...","help":"..."}]}
//
// Paths and columns only grow. Members are those of a plan (plan_file.hpp) under the same names; what is not known is left
// out. The codes are findings' (finding.hpp) and diagnostics'.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "io/orders/decision.hpp"
#include "io/orders/order_members.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/order_file.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/plan_file.hpp"

namespace mainbore::io {

struct RecordOptions {
  UnitSystem units = UnitSystem::us;
  bool rows = true;  // row and line, and the lines of reasons; without them a record is the same in whatever piece
                     // of a longer file its order stands
  std::string_view file = {};              // named in each record where it is not empty: several files in one batch
  std::span<const std::string> kept = {};  // of a table: columns of the orders behind its own
};

// One line of JSON, line end included. The decision is nullptr exactly where the order could not be read; it was made for
// records of this shape, in the units of the others.
void append_verdict_json(std::string& out, const OrderRecord& order, const Decision* decision,
                         const RecordOptions& options);

// The whole plan in one line, with the place of the order in front: every path of the plan stands where it does in the
// plan file. An order that could not be read, without a plan, is written as above.
void append_plan_record(std::string& out, const OrderRecord& order, const Plan* plan, PlanScope scope,
                        const RecordOptions& options);

// The same as a table (RFC 4180, lines ended by CR LF): first its header, then a row for each order. A kept column with
// the name of one of ours is own_NAME.
void append_verdict_header(std::string& out, const RecordOptions& options);
void append_verdict_row(std::string& out, const OrderRecord& order, const Decision* decision,
                        const RecordOptions& options);

// The order's feature of GeoJSON with what was decided among its properties, behind a comma and a line end. All else
// stands as it stood, byte for byte; a property with the name of one of ours is carried as own_NAME. `feature` is nullptr
// where the text was no feature.
void append_verdict_feature(std::string& out, const OrderRecord& order, const Decision* decision,
                            const FeatureText* feature, const RecordOptions& options);

}  // namespace mainbore::io
