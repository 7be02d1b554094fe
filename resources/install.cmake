# SPDX-License-Identifier: GPL-3.0-or-later
#
# What `cmake --install` puts where, and the Debian package that CPack makes of it. Included by the top CMakeLists.txt
# after the target `layshaft` is defined.

include(GNUInstallDirs)

set(layshaft_data_dir "${CMAKE_INSTALL_DATADIR}/layshaft")
cmake_path(GET CMAKE_CURRENT_LIST_DIR PARENT_PATH layshaft_source_dir)

install(TARGETS layshaft RUNTIME DESTINATION "${CMAKE_INSTALL_BINDIR}")
install(FILES "${CMAKE_CURRENT_LIST_DIR}/org.layshaft.Layshaft.desktop"
        DESTINATION "${CMAKE_INSTALL_DATADIR}/applications")
install(FILES "${CMAKE_CURRENT_LIST_DIR}/org.layshaft.Layshaft.metainfo.xml"
        DESTINATION "${CMAKE_INSTALL_DATADIR}/metainfo")
install(FILES "${CMAKE_CURRENT_LIST_DIR}/layshaft-mime.xml"
        DESTINATION "${CMAKE_INSTALL_DATADIR}/mime/packages"
        RENAME layshaft.xml)
install(FILES "${CMAKE_CURRENT_LIST_DIR}/layshaft.svg"
        DESTINATION "${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps")
install(FILES "${CMAKE_CURRENT_LIST_DIR}/bike.schema.json" DESTINATION "${layshaft_data_dir}")
install(DIRECTORY "${layshaft_source_dir}/sample-profiles/"
        DESTINATION "${layshaft_data_dir}/sample-profiles"
        FILES_MATCHING PATTERN "*.bike.json")

file(CONFIGURE OUTPUT "${CMAKE_CURRENT_BINARY_DIR}/copyright" @ONLY CONTENT
[[Format: https://www.debian.org/doc/packaging-manuals/copyright-format/1.0/
Upstream-Name: Layshaft

Files: *
Copyright: 2026 The Layshaft maintainers
License: GPL-3.0-or-later

License: GPL-3.0-or-later
 SPDX-License-Identifier: GPL-3.0-or-later
 .
 On Debian systems the text of the GNU General Public License version 3 is in
 /usr/share/common-licenses/GPL-3.
]])
install(FILES "${CMAKE_CURRENT_BINARY_DIR}/copyright" DESTINATION "${CMAKE_INSTALL_DATADIR}/doc/layshaft")

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME layshaft)
set(CPACK_PACKAGE_VERSION "${PROJECT_VERSION}")
set(CPACK_PACKAGE_DIRECTORY "${CMAKE_BINARY_DIR}")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_MAINTAINER "Layshaft maintainers <maintainers@layshaft.invalid>")
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "planner for motorcycle final-drive gearing")
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
"Layshaft shows what a change of sprocket, chain, tyre or gear ratio does
before it is made: to the speed in every gear, the pull at the rear wheel, top
speed, the run down a straight, the chain and the place of the axle, and the
speedometer. Stock is always drawn under the proposal.")
# The linked libraries are found in the binary; these are loaded at run time, where that cannot see them.
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_DEPENDS "qt6-qpa-plugins, libqt6svg6")
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "fonts-dejavu-core, qt6-wayland")

# Folders on the way to an installed file get the builder's umask; in the package everyone must be able to enter them.
set(CPACK_PRE_BUILD_SCRIPTS "${CMAKE_CURRENT_BINARY_DIR}/open-package-folders.cmake")
file(WRITE "${CPACK_PRE_BUILD_SCRIPTS}" [[
file(CHMOD_RECURSE "${CPACK_TEMPORARY_DIRECTORY}" DIRECTORY_PERMISSIONS
     OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
]])

include(CPack)
