// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <initializer_list>
#include <map>
#include <memory>
#include <string>
#include <utility>

namespace layshaft {

/// Keys that this version does not know, each with its value as JSON text: kept so that saving loses nothing.
/// A value; copies share what they hold until one of them is changed, for there may be megabytes of it.
class Extras {
 public:
  using Map = std::map<std::string, std::string>;

  Extras() = default;
  Extras(std::initializer_list<Map::value_type> entries) {
    if (entries.size() > 0) held_ = std::make_shared<Map>(entries);
  }

  bool empty() const { return !held_ || held_->empty(); }
  std::size_t size() const { return held_ ? held_->size() : 0; }
  Map::const_iterator begin() const { return map().begin(); }
  Map::const_iterator end() const { return map().end(); }
  const std::string& at(const std::string& key) const { return map().at(key); }

  void keep(std::string key, std::string json) {
    if (!held_)
      held_ = std::make_shared<Map>();
    else if (held_.use_count() > 1)
      held_ = std::make_shared<Map>(*held_);
    held_->insert_or_assign(std::move(key), std::move(json));
  }
  void clear() { held_.reset(); }

  friend bool operator==(const Extras& a, const Extras& b) {
    return a.held_ == b.held_ || a.map() == b.map();
  }

 private:
  const Map& map() const {
    static const Map kNone;
    return held_ ? *held_ : kNone;
  }

  std::shared_ptr<Map> held_;
};

}  // namespace layshaft
