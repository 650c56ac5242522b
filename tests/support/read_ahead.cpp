// What the headers that tests read ahead are compiled with: see tests/CMakeLists.txt. main.cpp cannot be it, as doctest
// writes its own part only where its header was not read before.
