# CMake generated Testfile for 
# Source directory: /tmp/h/openjob/tests
# Build directory: /tmp/h/openjob/build-rel/tests
# 
# This file includes the relevant testing commands required for 
# testing this directory and lists subdirectories to be tested as well.
include("/tmp/h/openjob/build-rel/tests/core_tests[1]_include.cmake")
include("/tmp/h/openjob/build-rel/tests/external_tests[1]_include.cmake")
include("/tmp/h/openjob/build-rel/tests/ui_tests[1]_include.cmake")
add_test([=[bench_steps]=] "/tmp/h/openjob/build-rel/tests/bench" "--gate" "steps")
set_tests_properties([=[bench_steps]=] PROPERTIES  _BACKTRACE_TRIPLES "/tmp/h/openjob/tests/CMakeLists.txt;43;add_test;/tmp/h/openjob/tests/CMakeLists.txt;0;")
subdirs("fuzz")
