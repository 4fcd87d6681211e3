// SPDX-License-Identifier: MIT
// Files carried inside a PDF.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loomfolio {

/// The content of the file called `name` that `pdf_bytes` carries; nothing when it is no PDF or carries no such file.
std::optional<std::string> extract_attachment(std::string_view pdf_bytes, std::string_view name);

/// The names of the files that `pdf_bytes` carries, sorted; none when it is no PDF.
std::vector<std::string> list_attachments(std::string_view pdf_bytes);

}  // namespace loomfolio
