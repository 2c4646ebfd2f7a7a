# Read by ctest before it runs anything: the environment of every test.
set(ENV{XDG_CONFIG_HOME} "/nonexistent")
