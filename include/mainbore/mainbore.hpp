// All of the library that a program needs to plan taps: read a job, plan it, print it.
//
//     #include <mainbore/mainbore.hpp>
//
// The formulas behind a plan stand in headers of their own under mechanics/, hydraulics/, sanitary/ and excavation/.
#pragma once

#include "mainbore/approved.hpp"
#include "mainbore/approved_file.hpp"
#include "mainbore/calculation.hpp"
#include "mainbore/calculation_sheet.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/evidence.hpp"
#include "mainbore/finding_words.hpp"
#include "mainbore/fingerprint.hpp"
#include "mainbore/identify.hpp"
#include "mainbore/job.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/order_file.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/pocket_table.hpp"
#include "mainbore/report.hpp"
#include "mainbore/rules.hpp"
#include "mainbore/rules_file.hpp"
#include "mainbore/schema.hpp"
#include "mainbore/settings.hpp"
#include "mainbore/settings_file.hpp"
#include "mainbore/sheet.hpp"
#include "mainbore/tool_file.hpp"
#include "mainbore/tool_report.hpp"
#include "mainbore/version.hpp"
#include "mainbore/what_if.hpp"
#include "mainbore/work.hpp"
