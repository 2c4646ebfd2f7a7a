# The field sheet: a page of HTML with drawings.
target_sources(mainbore PRIVATE
  drawing.cpp
  html_writer.cpp
  sheet.cpp
  sheet_lines.cpp
  sheet_style.cpp
  svg_canvas.cpp
  svg_drawing.cpp)
