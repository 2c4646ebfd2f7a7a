// The test framework, whichever major version the machine has.
#pragma once

#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
#else
#include <catch2/catch.hpp>
namespace Catch {
using Detail::Approx;  // where version 3 has it
}
#endif
