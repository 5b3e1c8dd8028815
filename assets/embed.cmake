# cmake -DIN=file -DOUT=file.cpp -DSYMBOL=name -P embed.cmake: writes the file's bytes as a C array.
file(READ ${IN} hex HEX)
string(LENGTH "${hex}" digits)
math(EXPR size "${digits} / 2")
string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," bytes "${hex}")
file(WRITE ${OUT} "extern const unsigned char ${SYMBOL}[];\nextern const unsigned long ${SYMBOL}_size;\n"
  "const unsigned char ${SYMBOL}[] = {${bytes}0};\nconst unsigned long ${SYMBOL}_size = ${size};\n")
