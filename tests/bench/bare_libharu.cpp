// The least that libharu alone must do for one label: the same three faces, a text in each, a picture as large as a QR
// code.
//   bench_libharu FONTS OUT.pdf
#include <hpdf.h>

#include <array>
#include <string>
#include <vector>

namespace {

constexpr float kSide = 141.73F;  // 50 mm in points
constexpr unsigned kModules = 41;

// A chequered picture: what is in it costs nothing.
HPDF_Image picture(HPDF_Doc document) {
  const std::vector<HPDF_BYTE> rows(kModules * ((kModules + 7) / 8), 0xAA);
  return HPDF_LoadRawImageFromMem(document, rows.data(), kModules, kModules, HPDF_CS_DEVICE_GRAY, 1);
}

void draw(HPDF_Doc document, const std::string& fonts) {
  const std::array<const char*, 3> faces = {"Regular", "Bold", "ExtraBold"};
  HPDF_Page page = HPDF_AddPage(document);
  HPDF_Page_SetWidth(page, kSide);
  HPDF_Page_SetHeight(page, kSide);
  HPDF_Page_BeginText(page);
  for (std::size_t n = 0; n < faces.size(); ++n) {
    const std::string file = fonts + "/AtkinsonHyperlegibleNext-" + faces[n] + ".ttf";
    const char* name = HPDF_LoadTTFontFromFile(document, file.c_str(), HPDF_TRUE);
    HPDF_Page_SetFontAndSize(page, HPDF_GetFont(document, name, "UTF-8"), 12);
    HPDF_Page_TextOut(page, 10, 120 - 20 * static_cast<float>(n), "Chilli-lime butter USE BY TUE 01 DEC 2026");
  }
  HPDF_Page_EndText(page);
  HPDF_Page_DrawImage(page, picture(document), 85, 5, 50, 50);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) return 2;
  HPDF_Doc document = HPDF_New(nullptr, nullptr);
  HPDF_UseUTFEncodings(document);
  HPDF_SetCompressionMode(document, HPDF_COMP_ALL);
  draw(document, argv[1]);
  const HPDF_STATUS status = HPDF_SaveToFile(document, argv[2]);
  HPDF_Free(document);
  return status == HPDF_OK ? 0 : 1;
}
