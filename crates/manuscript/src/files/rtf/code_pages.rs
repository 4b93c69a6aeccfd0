//! Which set of characters a byte belongs to.

use encoding_rs::Encoding;

/// The set of a Windows or DOS code page; Western European where it is not known. DOS pages 437 and 850 have no
/// decoder here, so their letters above 127 are taken for Western European.
pub(super) fn of_page(number: i32) -> &'static Encoding {
    match number {
        874 => encoding_rs::WINDOWS_874,
        866 => encoding_rs::IBM866,
        932 => encoding_rs::SHIFT_JIS,
        936 => encoding_rs::GBK,
        949 => encoding_rs::EUC_KR,
        950 => encoding_rs::BIG5,
        1250 => encoding_rs::WINDOWS_1250,
        1251 => encoding_rs::WINDOWS_1251,
        1253 => encoding_rs::WINDOWS_1253,
        1254 => encoding_rs::WINDOWS_1254,
        1255 => encoding_rs::WINDOWS_1255,
        1256 => encoding_rs::WINDOWS_1256,
        1257 => encoding_rs::WINDOWS_1257,
        1258 => encoding_rs::WINDOWS_1258,
        10000 => encoding_rs::MACINTOSH,
        65001 => encoding_rs::UTF_8,
        _ => encoding_rs::WINDOWS_1252,
    }
}

/// The code page of a font's set of characters (Rich Text Format 1.9, 'Font table'); none for the text's own.
pub(super) fn of_font(charset: i32) -> Option<i32> {
    Some(match charset {
        0 => 1252,
        77 => 10000,
        128 => 932,
        129 => 949,
        134 => 936,
        136 => 950,
        161 => 1253,
        162 => 1254,
        163 => 1258,
        177 => 1255,
        178 => 1256,
        186 => 1257,
        204 => 1251,
        222 => 874,
        238 => 1250,
        _ => return None,
    })
}
