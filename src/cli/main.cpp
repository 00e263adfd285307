#include <iostream>

#include "cli/console.h"

int main(int count, char** words) { return cli::run(count, words, std::cin, std::cout, std::cerr); }
