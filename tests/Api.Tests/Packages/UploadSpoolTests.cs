using Microsoft.Extensions.Options;
using Toepan.Api.Packages;
using Toepan.Domain.Packages;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages;

public sealed class UploadSpoolTests : IDisposable
{
    private readonly DirectoryInfo folder = TestFolders.Create();

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void Create_FileLeftByACrash_IsRemovedBeforehand()
    {
        File.WriteAllText(Path.Combine(folder.FullName, "upload-of-before.tmp"), "half a package");
        File.WriteAllText(Path.Combine(folder.FullName, "something else"), "stays");

        _ = Spool(1_000);

        Assert.Equal(["something else"], folder.EnumerateFiles().Select(file => file.Name));
    }

    [Fact]
    public async Task Receive_Bytes_HashesThemAndLeavesNoNameBehind()
    {
        await using var upload = await Spool(1_000).Receive(new MemoryStream("abc"u8.ToArray()), TestContext.Current.CancellationToken);

        // FIPS 180-4, the example message "abc".
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", upload!.Sha256);
        Assert.Equal((3, 0), (upload.File.Length, upload.File.Position));
        Assert.Empty(folder.EnumerateFiles());
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(2, false)]
    public async Task Receive_AtTheLimit_IsTakenAndOneMoreIsNot(long limit, bool taken)
    {
        await using var upload = await Spool(limit).Receive(new MemoryStream("abc"u8.ToArray()), TestContext.Current.CancellationToken);

        Assert.Equal(taken, upload is not null);
    }

    private UploadSpool Spool(long maxBytes) =>
        new(Options.Create(new UploadSettings { Directory = folder.FullName }), PackageLimits.Default with { MaxBytes = maxBytes });
}
