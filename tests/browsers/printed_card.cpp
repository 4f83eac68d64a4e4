// Prints the panel of a sample card as the page gets it: printed_card NAME. For tests that paint and print it.
#include <cstdio>
#include <string>

#include "shell/panels/panel.h"
#include "tests/shell/sample_cards.h"
#include "web/json.h"

int main(int count, char** arguments) {
  const std::string json = fogsheet::to_json(fogsheet::to_value(fogsheet::card_page(fogsheet::sample::card_named(count > 1 ? arguments[1] : ""))));
  std::puts(json.c_str());
}
