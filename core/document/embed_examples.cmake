# Writes OUT, a C++ file that holds the plans NAMES out of FOLDER as text: core has no resource system, and the
# program needs no file beside it.
file(WRITE "${OUT}.new" "// Written by core/document/embed_examples.cmake.\n#include \"core/document/embedded_examples.h\"\n\n"
                        "namespace stemwright {\n\nnamespace {\n\nconstexpr EmbeddedExample all[] = {\n")
foreach(name IN LISTS NAMES)
  file(READ "${FOLDER}/${name}.stemplan" text)
  file(APPEND "${OUT}.new" "    {\"${name}\", R\"plan(${text})plan\"},\n")
endforeach()
file(APPEND "${OUT}.new" "};\n\n} // namespace\n\nstd::span<const EmbeddedExample> embeddedExamples() {\n    return all;\n}\n\n"
                         "} // namespace stemwright\n")
file(RENAME "${OUT}.new" "${OUT}")
