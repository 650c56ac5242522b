// The one value error type of Cotter, and Result<T>. For every layer; no threads involved.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace cotter {

// The few codes that a caller acts on differently. Everything else about an error is text.
enum class Errc {
    refused,    // the input is not acceptable; the user can mend it
    not_found,  // a file or record that should be there is not
    damaged,    // it is ours, but its bytes are broken
    too_new,    // it is ours, written by a newer program
    not_ours,   // it is something else altogether
    no_space,   // the disk or a quota is full
    busy,       // another process holds it
    io,         // the system refused an operation for another reason
    cancelled,  // the user stopped it
};

// An error in three parts, so that the one line shown says what, where and what to do.
struct Error {
    Errc code = Errc::refused;
    std::string what;   // "the photo is cut off"
    std::string where;  // "IMG_0412.jpg, byte 18,204" (may be empty)
    std::string todo;   // "copy it again from the camera" (may be empty)

    // The one line a person sees: "what: where; todo".
    [[nodiscard]] std::string line() const;
};

template <class T = void>
using Result = tl::expected<T, Error>;

using tl::unexpected;

[[nodiscard]] unexpected<Error> fail(Errc code, std::string what, std::string where = {}, std::string todo = {});

// The same error with an outer place put before its `where`: `context(e, "packet.zip")`.
[[nodiscard]] Error context(Error error, std::string_view outer);

}  // namespace cotter

// Returns the error of `expr` from the enclosing function when it failed.
#define COTTER_TRY(expr)                                                                                          \
    do {                                                                                                          \
        if (auto try_result_ = (expr); !try_result_) return ::cotter::unexpected(std::move(try_result_).error()); \
    } while (false)

#define COTTER_CONCAT2(a, b) a##b
#define COTTER_CONCAT(a, b) COTTER_CONCAT2(a, b)
// NOLINTBEGIN(bugprone-macro-parentheses): a declaration cannot stand in parentheses
#define COTTER_ASSIGN2(tmp, decl, expr)                            \
    auto tmp = (expr);                                             \
    if (!tmp) return ::cotter::unexpected(std::move(tmp).error()); \
    decl = std::move(*tmp)
// NOLINTEND(bugprone-macro-parentheses)

// COTTER_ASSIGN(auto x, f()): x is f()'s value, or the enclosing function returns f()'s error.
#define COTTER_ASSIGN(decl, expr) COTTER_ASSIGN2(COTTER_CONCAT(assign_result_, __LINE__), decl, expr)
