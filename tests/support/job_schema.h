// The published schema of job.json, by a validator of another house: what the reader takes is held against it. One
// thread.
#pragma once

#include <memory>
#include <string>
#include <string_view>

namespace cotter::test {

class JobSchema {
public:
    JobSchema();  // reads assets/schema/job-1.schema.json
    ~JobSchema();
    JobSchema(const JobSchema&) = delete;
    JobSchema& operator=(const JobSchema&) = delete;

    // What the schema has against the document, with the place; empty when nothing.
    [[nodiscard]] std::string complaint(std::string_view json) const;

private:
    struct Ready;
    std::unique_ptr<Ready> ready_;
};

}  // namespace cotter::test
