using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Toepan.Api.Store.Migrations
{
    /// <inheritdoc />
    public partial class Attachments : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "films",
                schema: "lab",
                table: "package",
                type: "jsonb",
                nullable: false,
                defaultValueSql: "'[]'::jsonb");

            migrationBuilder.CreateTable(
                name: "stored_file",
                schema: "lab",
                columns: table => new
                {
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    length = table.Column<long>(type: "bigint", nullable: false),
                    media_type = table.Column<string>(type: "text", nullable: false),
                    frames_per_second = table.Column<double>(type: "double precision", nullable: true),
                    stored_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stored_file", x => x.sha256);
                });

            migrationBuilder.CreateTable(
                name: "attachment",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    test = table.Column<string>(type: "text", nullable: true),
                    specimen_id = table.Column<long>(type: "bigint", nullable: true),
                    file_sha256 = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    package_path = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_attachment", x => x.id);
                    table.ForeignKey(
                        name: "fk_attachment_specimen_row_specimen_id",
                        column: x => x.specimen_id,
                        principalSchema: "lab",
                        principalTable: "specimen",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_attachment_stored_file_file_sha256",
                        column: x => x.file_sha256,
                        principalSchema: "lab",
                        principalTable: "stored_file",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "stored_file_chunk",
                schema: "lab",
                columns: table => new
                {
                    file_sha256 = table.Column<string>(type: "text", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stored_file_chunk", x => new { x.file_sha256, x.number });
                    table.ForeignKey(
                        name: "fk_stored_file_chunk_stored_file_file_sha256",
                        column: x => x.file_sha256,
                        principalSchema: "lab",
                        principalTable: "stored_file",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "attachment_note",
                schema: "lab",
                columns: table => new
                {
                    attachment_id = table.Column<long>(type: "bigint", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    act = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    caption = table.Column<string>(type: "text", nullable: true),
                    camera = table.Column<string>(type: "text", nullable: true),
                    taken_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    moment = table.Column<string>(type: "text", nullable: true),
                    alternative_text = table.Column<string>(type: "text", nullable: true),
                    withdrawn = table.Column<bool>(type: "boolean", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: true),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_attachment_note", x => new { x.attachment_id, x.version });
                    table.ForeignKey(
                        name: "fk_attachment_note_attachment_row_attachment_id",
                        column: x => x.attachment_id,
                        principalSchema: "lab",
                        principalTable: "attachment",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "film_timing",
                schema: "lab",
                columns: table => new
                {
                    attachment_id = table.Column<long>(type: "bigint", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    frames_per_second = table.Column<double>(type: "double precision", nullable: false),
                    time_zero_frame = table.Column<double>(type: "double precision", nullable: false),
                    playback_frames_per_second = table.Column<double>(type: "double precision", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: true),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_film_timing", x => new { x.attachment_id, x.version });
                    table.ForeignKey(
                        name: "fk_film_timing_attachment_attachment_id",
                        column: x => x.attachment_id,
                        principalSchema: "lab",
                        principalTable: "attachment",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_attachment_file_sha256",
                schema: "lab",
                table: "attachment",
                column: "file_sha256");

            migrationBuilder.CreateIndex(
                name: "ix_attachment_specimen_id",
                schema: "lab",
                table: "attachment",
                column: "specimen_id");

            migrationBuilder.CreateIndex(
                name: "ix_attachment_test_file_sha256",
                schema: "lab",
                table: "attachment",
                columns: new[] { "test", "file_sha256" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "attachment_note",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "film_timing",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "stored_file_chunk",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "attachment",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "stored_file",
                schema: "lab");

            migrationBuilder.DropColumn(
                name: "films",
                schema: "lab",
                table: "package");
        }
    }
}
