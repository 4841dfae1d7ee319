# CMake generated Testfile for 
# Source directory: /tmp/h/openjob
# Build directory: /tmp/h/openjob/build-rel
# 
# This file includes the relevant testing commands required for 
# testing this directory and lists subdirectories to be tested as well.
subdirs("tests")
