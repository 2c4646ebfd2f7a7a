// Approx under one name. Version 2 of the test framework keeps it in Catch::Detail, where Catch::Approx finds a matcher
// function instead.
#pragma once

#include "support/catch.hpp"

#if CATCH_VERSION_MAJOR < 3
using Catch::Detail::Approx;
#else
using Catch::Approx;
#endif
