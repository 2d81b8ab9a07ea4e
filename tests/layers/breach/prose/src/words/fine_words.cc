const char* text = "Only this folder says whole sentences.";
