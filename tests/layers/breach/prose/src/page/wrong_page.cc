const char* fine[] = {
    "<div class=\"plot wide tall\" role=\"img\">",
    " class=\"one two three\"",
    "<path d=\"M10 1H18V7H10Z\" class=\"line thin dashed",
    "figure { margin: 0 auto auto; display: inline flex grid; }",
    R"(<style>main p em { color: red; } a b c d { margin: 0; })",
    "</p>\n<p>",
};
const char* wrong[] = {
    "<p>Nothing stands against it.</p>",                                // breach
    "<svg role=\"img\" aria-label=\"Density over log exposure\"><g>",   // breach
    "<i>one</i> <b>of those</b>",
    "\" width=\"10\">beyond the limit</text>",                         // breach
};
