using Toepan.Api.Store;
using Toepan.Api.Tests.Store;

namespace Toepan.Api.Tests.Embargo;

/// <summary>A sheet signed, sent, answered, approved and given a time, marked in every word; its copy for the public is planted by <see cref="EmbargoedRows"/>.</summary>
internal static class ReleasePlanter
{
    private const string Hash = "feedfacefeedfacefeedfacefeedfacefeedfacefeedfacefeedfacefeedface";

    public static async Task Plant(StoreConnections connections, Marks marks, string vehicle)
    {
        var (by, at) = ($"'{marks.In("by")}'", "now() - interval '1 hour'");
        await Sql.Execute(
            connections.Owner,
            $"""
            INSERT INTO lab.frozen_document (sha256, document, kept_at) VALUES ('{Hash}', '{marks.In("document")}', {at});
            INSERT INTO lab.sheet_signature (vehicle_key, sha256, by, at) VALUES ('{vehicle}', '{Hash}', {by}, {at});
            INSERT INTO lab.manufacturer_notice (vehicle_key, sha256, recipient, due_on, by, at)
              VALUES ('{vehicle}', '{Hash}', '{marks.In("recipient")}', current_date + 10, {by}, {at});
            INSERT INTO lab.manufacturer_reply (notice_id, text, may_print, received_on, by, at)
              SELECT id, '{marks.In("reply")}', true, current_date, {by}, {at} FROM lab.manufacturer_notice;
            INSERT INTO lab.sheet_approval (vehicle_key, sha256, by, at) VALUES ('{vehicle}', '{Hash}', {by}, {at});
            INSERT INTO lab.release_act (id, vehicle_key, test, slug, version, kind, sha256, why, visible_from, by, at)
              VALUES ('0190a6c7-3333-7aaa-8bbb-123456789abc', '{vehicle}', 'XX-001', '{marks.In("slug")}', 1, 'Release', '{Hash}', '{marks.In("why")}', now() + interval '1 day', {by}, {at});
            """);
    }
}
