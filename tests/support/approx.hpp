// Approx by its short name, for tests full of numbers.
#pragma once

#include "support/catch.hpp"

using Catch::Approx;
