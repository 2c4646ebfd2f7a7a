# Four Debian packages out of what is installed: mainbore, libmainbore0, libmainbore-dev, python3-mainbore. .ci/release makes
# them; they belong to the release of Debian or Ubuntu that they are built on, whose simdjson they name.
string(TIMESTAMP changelog_date "%a, %d %b %Y %H:%M:%S +0000" UTC)  # of SOURCE_DATE_EPOCH where it is set
set(maintainer "The mainbore contributors <contributors@mainbore.example>")

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME mainbore)
set(CPACK_PACKAGE_VENDOR "the mainbore contributors")
set(CPACK_PACKAGE_CONTACT "${maintainer}")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_PACKAGE_DIRECTORY ${PROJECT_BINARY_DIR}/packages)
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ
    WORLD_EXECUTE)
set(CPACK_COMPONENTS_GROUPING IGNORE)
set(CPACK_COMPONENTS_ALL program shared development python)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
set(CPACK_DEBIAN_COMPRESSION_TYPE xz)
set(same_version "(= ${PROJECT_VERSION})")

# mainbore_package(COMPONENT PACKAGE SECTION TEXT)
function(mainbore_package component package section text)
  string(TOUPPER ${component} upper)
  set(CPACK_DEBIAN_${upper}_PACKAGE_NAME ${package} PARENT_SCOPE)
  set(CPACK_DEBIAN_${upper}_PACKAGE_SECTION ${section} PARENT_SCOPE)
  set(CPACK_DEBIAN_${upper}_DESCRIPTION "${text}" PARENT_SCOPE)
  set(folder ${CMAKE_CURRENT_BINARY_DIR}/${package})
  file(WRITE ${folder}/changelog "mainbore (${PROJECT_VERSION}) unstable; urgency=medium\n\n"
       "  * Release ${PROJECT_VERSION}. CHANGELOG.md of the source says what changed.\n\n -- ${maintainer}  ${changelog_date}\n")
  # Without a name and a time inside, so that the same text gives the same bytes.
  install(CODE "execute_process(COMMAND gzip -9nk -f ${folder}/changelog COMMAND_ERROR_IS_FATAL ANY)" COMPONENT ${component})
  install(FILES ${folder}/changelog.gz DESTINATION share/doc/${package} COMPONENT ${component})
  install(FILES ${CMAKE_CURRENT_SOURCE_DIR}/copyright DESTINATION share/doc/${package} COMPONENT ${component})
endfunction()

set(what "mainbore reads what is known of a tap (main, service, pressure, place,
trench) and decides whether this main can take it, by which method, within
which limits. It says go, hold or no-go, with numbers that a crew can gauge.")
mainbore_package(program mainbore science "${what}")
mainbore_package(shared libmainbore0 libs "${what}\nThis package has the shared library of the C interface.")
mainbore_package(development libmainbore-dev libdevel "${what}\nThis package has the header of the C interface, and headers and static
library of C++.")
mainbore_package(python python3-mainbore python "${what}\nThis package has the Python module.")

install(FILES ${CMAKE_CURRENT_SOURCE_DIR}/lintian-overrides RENAME libmainbore0 DESTINATION share/lintian/overrides
        COMPONENT shared)

set(CPACK_DEBIAN_PROGRAM_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_SHARED_PACKAGE_SHLIBDEPS ON)
# What a program linked with the library depends on, and the cache of the loader made anew.
file(WRITE ${CMAKE_CURRENT_BINARY_DIR}/shlibs "libmainbore ${MAINBORE_SOVERSION} libmainbore0 (>= ${PROJECT_VERSION})\n")
set(CPACK_DEBIAN_SHARED_PACKAGE_CONTROL_EXTRA ${CMAKE_CURRENT_BINARY_DIR}/shlibs ${CMAKE_CURRENT_SOURCE_DIR}/triggers)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS "libmainbore0 ${same_version}, libsimdjson-dev")
set(CPACK_DEBIAN_PYTHON_PACKAGE_DEPENDS "python3:any (>= 3.9), libmainbore0 ${same_version}")
set(CPACK_DEBIAN_PYTHON_PACKAGE_ARCHITECTURE all)
set(CPACK_DEBIAN_PYTHON_PACKAGE_CONTROL_EXTRA ${CMAKE_CURRENT_SOURCE_DIR}/postinst ${CMAKE_CURRENT_SOURCE_DIR}/prerm)
include(CPack)
