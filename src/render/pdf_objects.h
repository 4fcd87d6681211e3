// SPDX-License-Identifier: MIT
#pragma once

#include <qpdf/QPDFObjectHandle.hh>
#include <string>

namespace loomfolio::pdf {

/// Of UTF-8.
inline QPDFObjectHandle text(const std::string& utf8) { return QPDFObjectHandle::newUnicodeString(utf8); }

/// `plain` without its slash.
inline QPDFObjectHandle name(const std::string& plain) { return QPDFObjectHandle::newName("/" + plain); }

}  // namespace loomfolio::pdf
