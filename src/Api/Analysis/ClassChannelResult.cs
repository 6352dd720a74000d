using Microsoft.AspNetCore.Http;
using Parquet;
using Parquet.Schema;
using Toepan.Api.Channels;
using Toepan.Api.Export;
using Toepan.Domain.Measures;

namespace Toepan.Api.Analysis;

/// <summary>Sends the channels of a class as Parquet, a row group a channel, each read when its turn comes; ends when the reader leaves.</summary>
internal sealed class ClassChannelResult(ClassChannels file) : IResult
{
    private static readonly DataField<string> Test = new("test"), Vehicle = new("vehicle"), Channel = new("channel"), Unit = new("unit");
    private static readonly DataField<int> Cfc = new("cfc", nullable: true);
    private static readonly DataField<double> Time = new("time_s"), Value = new("value");

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var (response, left) = (httpContext.Response, httpContext.RequestAborted);
        response.ContentType = MediaTypes.Parquet;
        response.Headers.ContentDisposition = $"attachment; filename=\"{file.Class}-channels.parquet\"";
        await using var forward = new ForwardStream(response.Body);
        await using (var writer = await ParquetWriter.CreateAsync(new ParquetSchema(Test, Vehicle, Channel, Unit, Cfc, Time, Value), forward, cancellationToken: left))
        {
            writer.CustomMetadata = new Dictionary<string, string>
            {
                ["query"] = file.Query, ["methodEditions"] = MethodEdition.Current, ["units"] = "time_s s; value as the column unit says", ["program"] = ProgramVersion.Commit,
            };
            await foreach (var channel in file.Channels.WithCancellation(left))
            {
                await Write(writer, channel, left);
                await forward.FlushAsync(left);
            }
        }

        await forward.FlushAsync(left);
    }

    private static async Task Write(ParquetWriter writer, ClassChannel channel, CancellationToken left)
    {
        var samples = channel.Samples;
        using var group = writer.CreateRowGroup();
        await group.WriteAsync(Test, Repeated(channel.Test, samples.Count));
        await group.WriteAsync(Vehicle, Repeated(channel.Vehicle, samples.Count));
        await group.WriteAsync(Channel, Repeated(samples.Code, samples.Count));
        await group.WriteAsync(Unit, Repeated(samples.Unit, samples.Count));
        await group.WriteAsync<int>(Cfc, Enumerable.Repeat(samples.Cfc, samples.Count).ToArray(), cancellationToken: left);
        await group.WriteAsync<double>(Time, SampleTimes.Of(samples), cancellationToken: left);
        await group.WriteAsync<double>(Value, samples.Values.ToArray(), cancellationToken: left);
        group.CompleteValidate();
    }

    private static string[] Repeated(string text, int count)
    {
        var texts = new string[count];
        Array.Fill(texts, text);
        return texts;
    }
}
