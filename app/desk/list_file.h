// A list written into a file beside the screen: PDF, CSV or calendar. For the desk's session.
#pragma once

#include <functional>
#include <memory>

#include "app/desk/list.h"
#include "app/tasks.h"
#include "core/base/files.h"

namespace cotter::desk {

struct ListOnPaper {
    std::string title, empty;
    std::vector<std::string> under;
    Columns columns;              // those shown
    std::vector<TableRow> rows;   // as shown, cells of all columns
    std::string share, software;  // where the fonts are; who made it
    Instant at;
};
[[nodiscard]] Result<Bytes> list_as_pdf(Files& files, const ListOnPaper& list);
[[nodiscard]] std::string list_as_csv(const ListOnPaper& list);

// Writes what `make` gives to "<path>.<ending>", in a folder that is made. Another list that stands there already
// stays: the new one is called "<path>_2.<ending>" and so on. `told` gets the file's path, on the app's thread.
struct NewFile {
    std::string path, ending;
};
[[nodiscard]] std::unique_ptr<Task> write_file(Files& files, NewFile file, std::function<Result<Bytes>()> make,
                                               std::function<void(Result<std::string>)> told);

}  // namespace cotter::desk
