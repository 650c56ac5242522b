// Where the program is built without PostgreSQL.
#include "core/store/sql.h"

namespace cotter {

Result<std::unique_ptr<SqlDb>> connect_postgresql(const std::string& where, const std::string&) {
    return fail(Errc::refused, "this program was built without PostgreSQL", shown_place(where),
                "name a file, or use a program that has it");
}

}  // namespace cotter
