using Toepan.Api.Channels;

namespace Toepan.Api.Tests.Channels;

public sealed class SampleCodecTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(4_000)]
    public void Decode_Encoded_GivesEveryBitBack(int count)
    {
        var random = new Random(count);
        var samples = Enumerable.Range(0, count).Select(_ => BitConverter.Int64BitsToDouble(random.NextInt64())).ToArray();

        var back = SampleCodec.Decode(SampleCodec.Encode(samples), count);

        Assert.Equal(samples.Select(BitConverter.DoubleToInt64Bits), back.Select(BitConverter.DoubleToInt64Bits));
    }

    [Fact]
    public void Decode_SpecialValues_KeepsSignedZeroAndNotANumber()
    {
        double[] samples = [-0.0, double.NaN, double.NegativeInfinity, double.Epsilon, double.MaxValue];

        var back = SampleCodec.Decode(SampleCodec.Encode(samples), samples.Length);

        Assert.Equal(samples.Select(BitConverter.DoubleToInt64Bits), back.Select(BitConverter.DoubleToInt64Bits));
    }

    [Fact]
    public void Decode_OtherVersion_IsRefused() => Assert.Throws<InvalidDataException>(() => SampleCodec.Decode([9, 1, 2], 1));

    [Fact]
    public void Decode_FewerBytesThanTheCount_IsRefused() =>
        Assert.Throws<EndOfStreamException>(() => SampleCodec.Decode(SampleCodec.Encode([1, 2]), 3));
}
