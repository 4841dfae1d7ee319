# CMake generated Testfile for 
# Source directory: /tmp/h/openjob/tests/fuzz
# Build directory: /tmp/h/openjob/build-rel/tests/fuzz
# 
# This file includes the relevant testing commands required for 
# testing this directory and lists subdirectories to be tested as well.
add_test([=[jobfile_fuzz]=] "/tmp/h/openjob/build-rel/tests/fuzz/jobfile_fuzz" "/tmp/h/openjob/tests/fuzz/corpus/jobfile_fuzz")
set_tests_properties([=[jobfile_fuzz]=] PROPERTIES  _BACKTRACE_TRIPLES "/tmp/h/openjob/tests/fuzz/CMakeLists.txt;19;add_test;/tmp/h/openjob/tests/fuzz/CMakeLists.txt;0;")
add_test([=[journal_fuzz]=] "/tmp/h/openjob/build-rel/tests/fuzz/journal_fuzz" "/tmp/h/openjob/tests/fuzz/corpus/journal_fuzz")
set_tests_properties([=[journal_fuzz]=] PROPERTIES  _BACKTRACE_TRIPLES "/tmp/h/openjob/tests/fuzz/CMakeLists.txt;19;add_test;/tmp/h/openjob/tests/fuzz/CMakeLists.txt;0;")
add_test([=[kind_fuzz]=] "/tmp/h/openjob/build-rel/tests/fuzz/kind_fuzz" "/tmp/h/openjob/tests/fuzz/corpus/kind_fuzz")
set_tests_properties([=[kind_fuzz]=] PROPERTIES  _BACKTRACE_TRIPLES "/tmp/h/openjob/tests/fuzz/CMakeLists.txt;19;add_test;/tmp/h/openjob/tests/fuzz/CMakeLists.txt;0;")
