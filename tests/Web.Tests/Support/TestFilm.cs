using SkiaSharp;

namespace Toepan.Web.Tests.Support;

/// <summary>A clip whose frames carry their numbers (tests/reference/films/make.sh): 120 frames, played at 30 a second.</summary>
public static class TestFilm
{
    /// <summary>Number of the frame a page's player shows, read from its pixels: eight squares, most significant first, white = 1.</summary>
    public const string ReadNumber = """
        () => {
          const film = document.getElementById("film");
          const canvas = document.createElement("canvas");
          [canvas.width, canvas.height] = [128, 32];
          const ink = canvas.getContext("2d");
          ink.drawImage(film, 0, 0);
          let number = 0;
          for (let bit = 0; bit < 8; bit++) number = number * 2 + (ink.getImageData(bit * 16 + 8, 16, 1, 1).data[0] > 127 ? 1 : 0);
          return number;
        }
        """;

    public static byte[] Bytes { get; } = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "reference", "films", "numbered-30.webm"));

    /// <summary>A small invented picture.</summary>
    public static byte[] Photograph()
    {
        using var bitmap = new SKBitmap(300, 200);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.LightGray);
        using var ink = new SKPaint { Color = SKColors.DarkSlateBlue };
        canvas.DrawRect(60, 60, 180, 80, ink);
        using var data = bitmap.Encode(SKEncodedImageFormat.Jpeg, 90);
        return data.ToArray();
    }
}
