namespace Toepan.Demo.Packages;

/// <summary>An invented picture of a vehicle in the hall, drawn pixel by pixel: from the side, before or after a crash that shortened its front.</summary>
internal static class Photograph
{
    private const int Width = 720;
    private const int Height = 480;
    private const double Floor = 372;
    private const double Nose = 640;

    /// <param name="paint">Colour of the body.</param>
    /// <param name="crushMm">How much shorter the front became, mm; 0 = before the crash.</param>
    public static byte[] FromTheSide((byte Red, byte Green, byte Blue) paint, double crushMm)
    {
        const double PixelsAMillimetre = 0.13;
        var rgb = new byte[Width * Height * 3];
        var crush = crushMm * PixelsAMillimetre;
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                var (red, green, blue) = At(x, y, crush, paint);
                var at = ((y * Width) + x) * 3;
                (rgb[at], rgb[at + 1], rgb[at + 2]) = (red, green, blue);
            }
        }

        return PngWriter.Write(rgb, Width);
    }

    private static (byte Red, byte Green, byte Blue) At(double x, double y, double crush, (byte Red, byte Green, byte Blue) paint)
    {
        // Whatever lies ahead of the firewall is pushed together; the hood rises where the front folds.
        const double Firewall = 470;
        var nose = Nose - crush;
        var along = x <= Firewall ? x : Firewall + ((x - Firewall) * (Nose - Firewall) / Math.Max(1, nose - Firewall));
        var fold = crush > 0 && x > Firewall && x < nose ? 0.22 * crush * Math.Abs(Math.Sin((along - Firewall) / 24)) : 0;
        if (Wheel(x, y, 190) is { } rear)
        {
            return rear;
        }

        if (Wheel(x, y, 560 - (0.55 * crush)) is { } front)
        {
            return front;
        }

        return along switch
        {
            > 90 and < Nose when y > 250 - fold && y < 350 => Shade(paint, 1 - ((y - 250) / 260)),
            > 110 and < 470 when y > 128 && y <= 250 => Cabin(along, y, paint),
            _ when y > Floor => Shade((96, 96, 102), 1 - ((y - Floor) / 400)),
            _ => Shade((201, 203, 206), 1 - (0.25 * y / Floor)),
        };
    }

    private static (byte Red, byte Green, byte Blue) Cabin(double along, double y, (byte Red, byte Green, byte Blue) paint) =>
        y > 146 && y < 232 && (along is (> 130 and < 262) or (> 280 and < 450)) ? ((byte)58, (byte)66, (byte)78) : Shade(paint, 0.96);

    private static (byte Red, byte Green, byte Blue)? Wheel(double x, double y, double centre)
    {
        var distance = Math.Sqrt(((x - centre) * (x - centre)) + ((y - 340) * (y - 340)));
        return distance switch { < 20 => (150, 152, 156), < 46 => (34, 34, 38), _ => null };
    }

    private static (byte Red, byte Green, byte Blue) Shade((byte Red, byte Green, byte Blue) colour, double factor) =>
        ((byte)(colour.Red * factor), (byte)(colour.Green * factor), (byte)(colour.Blue * factor));
}
