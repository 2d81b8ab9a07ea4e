#include "page/page_parts.h"

#include "page/draw/escape.h"
#include "page/page_style.h"
#include "words/caution_words.h"
#include "words/report_words.h"
#include "words/safety.h"
#include "words/sections.h"

namespace fogline {
namespace {

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos;
       at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
}

/// A command that must not be broken at its blank, nor copied with another sign in its place.
constexpr std::string_view unbroken_command = "--transfer linear";

template <typename Sentences>
Markup list_of(const Sentences& sentences) {
  if (sentences.empty()) {
    return {};
  }
  Element list("ul");
  for (const auto& sentence : sentences) {
    list.add(Element("li").add(sentence_markup(sentence)));
  }
  return Markup().add(list);
}

}  // namespace

Markup sentence_markup(std::string_view sentence) {
  std::string kept(sentence);
  replace_all(kept, " ± ", "\u00A0±\u00A0");
  replace_all(kept, " %", "\u00A0%");
  replace_all(kept, " °C", "\u00A0°C");
  Markup markup;
  std::string_view rest = kept;
  for (std::size_t at = rest.find(unbroken_command); at != std::string_view::npos;
       at = rest.find(unbroken_command)) {
    markup.text(rest.substr(0, at));
    markup.add(Element("span").set("class", "nb").text(unbroken_command));
    rest.remove_prefix(at + unbroken_command.size());
  }
  return markup.text(rest);
}

Markup paragraph(std::string_view sentence) {
  return sentence.empty() ? Markup() : Markup().add(Element("p").add(sentence_markup(sentence)));
}

Markup paragraphs(const std::vector<std::string>& sentences) {
  Markup markup;
  for (const std::string& sentence : sentences) {
    markup.add(paragraph(sentence));
  }
  return markup;
}

Markup list_markup(const std::vector<std::string>& sentences) {
  return list_of(sentences);
}

Markup list_markup(const std::vector<std::string_view>& sentences) {
  return list_of(sentences);
}

Markup cautions_list(const std::vector<Caution>& cautions) {
  if (cautions.empty()) {
    return {};
  }
  Element list("ul");
  for (const Caution& caution : cautions) {
    list.add(Element("li")
                 .set("class", caution.severity == Severity::note ? "" : "weighty")
                 .add(sentence_markup(caution_sentence(caution))));
  }
  return Markup().add(list);
}

Element link_to(SectionId id, std::string_view words) {
  std::string way = "#";
  way.append(section_of(id).anchor);
  return Element("a").set("href", way).text(words);
}

Element safety_paragraph() {
  Element paragraph("p");
  paragraph.set("class", "small").text(safety_line()).text(" ");
  return paragraph.add(link_to(SectionId::cautions, all_cautions_words()));
}

Element table_head(std::span<const std::string_view> names) {
  Element row("tr");
  for (const std::string_view name : names) {
    row.add(Element("th").set("scope", "col").text(name));
  }
  return Element("thead").add(row);
}

Element row_head(std::string_view name) {
  return Element("th").set("scope", "row").text(name);
}

Element page_head(const std::string& tool_version, const std::string& title) {
  Element head("head");
  head.add(Element("meta").set("charset", "utf-8"));
  head.add(Element("meta").set("name", "generator").set("content", "fogline " + tool_version));
  head.add(Element("meta")
               .set("name", "viewport")
               .set("content", "width=device-width, initial-scale=1"));
  return head.add(Element("title").text(title)).add(Element("style").style_sheet(page_style()));
}

std::string page_file(const Element& head, const Markup& body) {
  Element html("html");
  html.set("lang", "en").add(head).add(Element("body").add(body));
  return "<!DOCTYPE html>\n" + html.html() + "\n";
}

bool has_picture(const PagePicture& picture) {
  return !picture.bytes.empty() && picture.width > 0 && picture.height > 0;
}

Element picture_element(const PagePicture& picture, std::string_view id) {
  Element image("image");
  image.set("id", id).set("width", picture.width).set("height", picture.height);
  return image.set("href",
                   "data:" + picture.media_type + ";base64," + base64_from_bytes(picture.bytes));
}

}  // namespace fogline
