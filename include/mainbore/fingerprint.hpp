// The fingerprint of a plan: what must be the same for the plan to be made again.
//
//     fingerprint_of(plan).plan                  -> "1c07a52be83f90d4"
//     in_words(fingerprint_of(plan))             -> "1c07a52be83f90d4 (mainbore 2.4.0, tables 8d29..., rules 77b1..., job 03fe...)"
//
// It is of the values as they were planned with, not of the files: the order of members, line breaks and units of a job do
// not count, nor does which of its facts a settings file gave or in which units the plan was printed. 8 in and 203.2 mm are
// one job; lengths count to a millionth of an inch, pressures to a millionth of a psi. Every fact of the job counts, its
// id, place and note too. Of rules count the value, the words of each row (in inches and in millimeters), and whose rule it
// is by which document; the name of a file does not. Of tables every byte counts. Of an approved list every item counts, in
// its order; without one a plan has the fingerprint that it had before there were any.
//
// `plan`, `rules` and `job` are the first 64 bits of a SHA-256 (FIPS 180-4): enough to tell any two plans of a utility
// apart, and no seal against whoever wants two to look alike. The same plan gives the same bytes on every machine.
#pragma once

#include <string>

#include "mainbore/plan.hpp"

namespace mainbore {

struct Fingerprint {
  std::string plan;      // of all below: 16 hexadecimal digits
  std::string program;   // its version, as --version prints it
  std::string tables;    // Catalog::hash(), as --version prints it
  std::string rules;     // in force
  std::string job;       // as planned, with what settings laid under it
  std::string approved;  // the approved list, every item; empty: the plan was made without one
};

// Of a plan that a Planner made. Tables and rules are gone through once for all plans that follow each other.
[[nodiscard]] Fingerprint fingerprint_of(const Plan& plan);

// On one line: the plan's, and in brackets what it is made of.
[[nodiscard]] std::string in_words(const Fingerprint& fingerprint);

}  // namespace mainbore
