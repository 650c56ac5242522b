// Where the project's own files and the program's data are, for tests that read them. The one place that is compiled
// with the names of folders of this machine: a compiler cache gives all other tests to every checkout.
#pragma once

#include <string>
#include <string_view>

namespace cotter::test {

// A file or folder of the project, named as from its root: "assets/limits".
[[nodiscard]] std::string project_file(std::string_view path);
// The folder with the program's data as the build lays it out, without a slash at its end.
[[nodiscard]] std::string share_folder();

}  // namespace cotter::test
