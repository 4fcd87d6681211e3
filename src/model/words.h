// SPDX-License-Identifier: MIT
// The sentences of one language, by key. Sheets hold no sentence of their own: they ask here.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace loomfolio {

/// Words of layouts/words/<language>.toml: `cover.contents` is key `contents` of table [cover]. A text may hold `{name}` places.
class Words {
 public:
  Words() = default;
  Words(std::string language, bool right_to_left, std::map<std::string, std::string, std::less<>> texts)
      : language_(std::move(language)), right_to_left_(right_to_left), texts_(std::move(texts)) {}

  /// The text of that key; the key itself in angle brackets when there is none, which tests look for.
  std::string operator()(std::string_view key, const std::vector<std::pair<std::string, std::string>>& values = {}) const;
  bool has(std::string_view key) const { return texts_.find(key) != texts_.end(); }
  const std::string& language() const { return language_; }
  bool is_right_to_left() const { return right_to_left_; }
  const std::map<std::string, std::string, std::less<>>& texts() const { return texts_; }

 private:
  std::string language_ = "en";
  bool right_to_left_ = false;
  std::map<std::string, std::string, std::less<>> texts_;
};

}  // namespace loomfolio
