#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

namespace fogline {

/// Checks a report against the schema as far as the schema goes: type, const, enum, required,
/// properties, additionalProperties, items, oneOf, allOf, $ref, minimum, maximum (JSON Schema draft
/// 7). Stricter than the draft in one thing: a key that the schema doesn't describe is a fault, so
/// that nothing is written which the contract doesn't tell of. An object without `properties` may
/// hold anything.
class SchemaCheck {
 public:
  using Json = nlohmann::json;

  explicit SchemaCheck(Json schema) : schema_(std::move(schema)) {}

  /// What is wrong, a line each; empty where nothing is.
  [[nodiscard]] std::vector<std::string> faults(const Json& report) const {
    std::vector<std::string> found;
    check(report, schema_, "", found);
    return found;
  }

 private:
  const Json& resolved(const Json& schema) const {
    const auto reference = schema.find("$ref");
    return reference == schema.end()
               ? schema
               : schema_.at(Json::json_pointer(reference->get<std::string>().substr(1)));
  }

  static bool is_of_type(const Json& value, const std::string& type) {
    return (type == "object" && value.is_object()) || (type == "array" && value.is_array()) ||
           (type == "string" && value.is_string()) || (type == "boolean" && value.is_boolean()) ||
           (type == "null" && value.is_null()) || (type == "number" && value.is_number()) ||
           (type == "integer" && value.is_number_integer());
  }

  static bool fits_type(const Json& value, const Json& type) {
    if (type.is_string()) {
      return is_of_type(value, type);
    }
    return std::any_of(type.begin(), type.end(),
                       [&](const Json& one) { return is_of_type(value, one); });
  }

  // Adds what a schema says of an object's keys, those of its parts included.
  void collect_properties(const Json& unresolved, Json& properties) const {
    const Json& schema = resolved(unresolved);
    properties.update(schema.value("properties", Json::object()));
    for (const Json& part : schema.value("allOf", Json::array())) {
      collect_properties(part, properties);
    }
  }

  void check_object(const Json& value, const Json& schema, const std::string& path,
                    std::vector<std::string>& found) const {
    for (const Json& key : schema.value("required", Json::array())) {
      if (!value.contains(key.get<std::string>())) {
        found.push_back(path + " lacks " + key.get<std::string>());
      }
    }
    Json properties = Json::object();
    collect_properties(schema, properties);
    const auto others = schema.find("additionalProperties");
    const bool open = properties.empty() && others == schema.end();
    for (const auto& [key, field] : value.items()) {
      const std::string field_path = path + "/" + key;
      if (properties.contains(key)) {
        check(field, properties[key], field_path, found);
      } else if (others != schema.end() && others->is_object()) {
        check(field, *others, field_path, found);
      } else if (!open) {
        found.push_back(field_path + " isn't described");
      }
    }
  }

  void check_number(const Json& value, const Json& schema, const std::string& path,
                    std::vector<std::string>& found) const {
    if (schema.contains("minimum") && value < schema["minimum"]) {
      found.push_back(path + " is too small");
    }
    if (schema.contains("maximum") && value > schema["maximum"]) {
      found.push_back(path + " is too great");
    }
  }

  void check_one_of(const Json& value, const Json& choices, const std::string& path,
                    std::vector<std::string>& found) const {
    std::vector<std::string> nearest;
    for (const Json& choice : choices) {
      std::vector<std::string> faults;
      check(value, choice, path, faults);
      if (faults.empty()) {
        return;
      }
      // Null is the usual first choice: the last one tells more.
      nearest = faults;
    }
    found.insert(found.end(), nearest.begin(), nearest.end());
  }

  void check(const Json& value, const Json& unresolved, const std::string& path,
             std::vector<std::string>& found) const {
    const Json& schema = resolved(unresolved);
    if (schema.contains("type") && !fits_type(value, schema["type"])) {
      found.push_back(path + " isn't of type " + schema["type"].dump());
      return;
    }
    if (schema.contains("const") && value != schema["const"]) {
      found.push_back(path + " isn't " + schema["const"].dump());
    }
    if (schema.contains("enum") &&
        std::find(schema["enum"].begin(), schema["enum"].end(), value) == schema["enum"].end()) {
      found.push_back(path + " is " + value.dump() + ", none of " + schema["enum"].dump());
    }
    if (schema.contains("oneOf")) {
      check_one_of(value, schema["oneOf"], path, found);
    }
    if (schema.contains("allOf")) {
      for (const Json& part : schema["allOf"]) {
        check_part(value, part, path, found);
      }
    }
    if (value.is_object() && !schema.contains("oneOf")) {
      check_object(value, schema, path, found);
    } else if (value.is_array() && schema.contains("items")) {
      for (std::size_t i = 0; i < value.size(); ++i) {
        check(value[i], schema["items"], path + "/" + std::to_string(i), found);
      }
    } else if (value.is_number()) {
      check_number(value, schema, path, found);
    }
  }

  // A part of `allOf` describes some of the keys: the whole knows which are described at all.
  void check_part(const Json& value, const Json& unresolved, const std::string& path,
                  std::vector<std::string>& found) const {
    for (const Json& key : resolved(unresolved).value("required", Json::array())) {
      if (!value.contains(key.get<std::string>())) {
        found.push_back(path + " lacks " + key.get<std::string>());
      }
    }
  }

  Json schema_;
};

}  // namespace fogline
