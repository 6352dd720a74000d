using SkiaSharp;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages.Attachments;

/// <summary>
/// A picture's pixels and nothing else: decoded, turned the way its orientation says, fitted into a square and encoded anew. Whatever the file carried beside
/// its pixels is not read into the result, and what the encoder itself adds is taken out (<see cref="PictureParts"/>).
/// </summary>
internal static class PictureDecoder
{
    private const int Quality = 88;

    /// <summary>The picture as a JPEG (a PNG where asked and it is one), its longer edge at most <paramref name="edge"/> pixels.</summary>
    public static Outcome<DrawnPicture> Draw(byte[] bytes, int edge, long maxPixels, bool keepPng)
    {
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data);
        if (codec is null)
        {
            return Unreadable("The picture cannot be decoded.");
        }

        var (width, height) = (codec.Info.Width, codec.Info.Height);
        if ((long)width * height > maxPixels)
        {
            return Unreadable($"The picture has {width} × {height} pixels; at most {maxPixels} are decoded.");
        }

        using var decoded = Decode(codec, edge);
        if (decoded is null)
        {
            return Unreadable("The picture ends early or is damaged.");
        }

        using var drawn = Fit(decoded, codec.EncodedOrigin, edge);
        return Encode(drawn, keepPng && FileSignature.Of(bytes) == FileSignature.Png);
    }

    // A JPEG can be decoded smaller at once, which spares memory.
    private static SKBitmap? Decode(SKCodec codec, int edge)
    {
        var scale = Math.Min(1f, (float)edge / Math.Max(codec.Info.Width, codec.Info.Height));
        var size = codec.GetScaledDimensions(scale);
        var alpha = codec.Info.AlphaType == SKAlphaType.Opaque ? SKAlphaType.Opaque : SKAlphaType.Premul;
        var info = new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, alpha, SKColorSpace.CreateSrgb());
        var bitmap = new SKBitmap(info);
        if (codec.GetPixels(info, bitmap.GetPixels()) == SKCodecResult.Success)
        {
            return bitmap;
        }

        bitmap.Dispose();
        return null;
    }

    private static SKBitmap Fit(SKBitmap decoded, SKEncodedOrigin origin, int edge)
    {
        var turned = origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        var scale = Math.Min(1f, (float)edge / Math.Max(decoded.Width, decoded.Height));
        var (across, down) = (Math.Max(1, (int)Math.Round(decoded.Width * scale)), Math.Max(1, (int)Math.Round(decoded.Height * scale)));
        var drawn = new SKBitmap(new SKImageInfo(turned ? down : across, turned ? across : down, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(drawn);
        canvas.Clear(SKColors.White);
        canvas.SetMatrix(Upright(origin, across, down));
        using var image = SKImage.FromBitmap(decoded);
        canvas.DrawImage(image, new SKRect(0, 0, across, down), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        return drawn;
    }

    // Exif 2.32, 4.6.4, Orientation: the eight ways a w × h picture can lie.
    private static SKMatrix Upright(SKEncodedOrigin origin, float w, float h) => origin switch
    {
        SKEncodedOrigin.TopRight => new(-1, 0, w, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new(-1, 0, w, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new(1, 0, 0, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new(0, -1, h, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new(0, -1, h, -1, 0, w, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new(0, 1, 0, -1, 0, w, 0, 0, 1),
        _ => SKMatrix.Identity,
    };

    private static DrawnPicture Encode(SKBitmap drawn, bool png)
    {
        using var pixels = drawn.PeekPixels();
        using var encoded = png ? pixels.Encode(SKPngEncoderOptions.Default) : pixels.Encode(new SKJpegEncoderOptions(Quality));
        return new(PictureParts.Bare(encoded!.ToArray()), png ? FileSignature.Png : FileSignature.Jpeg, drawn.Width, drawn.Height);
    }

    private static Failure Unreadable(string detail) => new(FailureKind.Unreadable, "Picture cannot be drawn", detail);
}

/// <summary>A picture drawn anew, with nothing but its pixels.</summary>
public sealed record DrawnPicture(byte[] Bytes, string MediaType, int Width, int Height);
