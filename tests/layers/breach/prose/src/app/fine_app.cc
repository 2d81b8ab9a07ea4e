const char* text = "And this one speaks too.";
